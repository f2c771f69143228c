/** A label that wants to stand beside a point. Lengths in pixels, y down. */
interface LabelWish {
  readonly x: number;
  readonly y: number;
  /** The side that the path leaves free: +1 right of the point, -1 left of it. */
  readonly ahead: 1 | -1;
  readonly text: string;
  /** Whether the path goes on ahead of the point after all, so that the label stands better below it. */
  readonly isPassedBy: boolean;
}

/** Where a label stands. */
export interface PlacedLabel {
  readonly x: number;
  /** Middle of its line. */
  readonly y: number;
  readonly anchor: "start" | "end";
}

/** A rectangle, pixels. */
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Width of a character of the chart's 11 px type, rounded up, pixels. */
const CHARACTER = 5.9;
const LINE = 12;
const GAP = 9;

/** Width that a text takes in the chart's type, about, pixels. */
export function textWidth(text: string): number {
  return text.length * CHARACTER + 1;
}

/** Places to try: which side, and how far down; first the one straight ahead, which the path leaves free. */
const PLACES: readonly { readonly side: 1 | -1; readonly down: number }[] = [
  { side: 1, down: 0 },
  { side: 1, down: 9 },
  { side: 1, down: -9 },
  { side: -1, down: 10 },
  { side: -1, down: -9 },
  { side: 1, down: 18 },
  { side: -1, down: 20 },
];

function boxAt({ x, y, ahead, text }: LabelWish, { side, down }: { side: 1 | -1; down: number }): Box {
  const width = textWidth(text);
  const near = x + ahead * side * GAP;
  const far = near + ahead * side * width;
  return {
    left: Math.min(near, far),
    right: Math.max(near, far),
    top: y + down - LINE / 2,
    bottom: y + down + LINE / 2,
  };
}

const overlap = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const isInside = (box: Box, bounds: Box) =>
  box.left >= bounds.left && box.right <= bounds.right && box.top >= bounds.top && box.bottom <= bounds.bottom;

/** How bad a place is: to run out of the chart is worse than to cover another label, and that than to cover a mark. */
function badness(box: Box, bounds: Box, labels: readonly Box[], marks: readonly Box[]): number {
  const outside = isInside(box, bounds) ? 0 : 100;
  const covered = labels.filter((other) => overlap(box, other)).length;
  return outside + 10 * covered + marks.filter((other) => overlap(box, other)).length;
}

/**
 * Places labels beside their points, one after the other, so that they keep inside the chart and off each other.
 *
 * @param marks - what they should rather not cover
 * @returns one for each wish, in order
 */
export function placeLabels(wishes: readonly LabelWish[], bounds: Box, marks: readonly Box[]): PlacedLabel[] {
  const taken: Box[] = [];
  return wishes.map((wish) => {
    const places = wish.isPassedBy ? PLACES.filter(({ down }) => down !== 0) : PLACES;
    const boxes = places.map((place) => boxAt(wish, place));
    const costs = boxes.map((box) => badness(box, bounds, taken, marks));
    const best = costs.indexOf(Math.min(...costs));
    const box = boxes[best] ?? boxAt(wish, { side: 1, down: 0 });
    taken.push(box);
    const isRight = box.left >= wish.x;
    return { x: isRight ? box.left : box.right, y: (box.top + box.bottom) / 2, anchor: isRight ? "start" : "end" };
  });
}

/**
 * Spreads points on a line so that neighbors keep a distance, moving them as little as order allows.
 *
 * @param wanted - rising
 * @param most - the end of the line
 */
export function spread(wanted: readonly number[], distance: number, most: number): number[] {
  const down: number[] = [];
  for (const at of wanted) down.push(Math.max(at, (down.at(-1) ?? -Infinity) + distance));
  let limit = most;
  const up = down.toReversed().map((at) => {
    const placed = Math.min(at, limit);
    limit = placed - distance;
    return placed;
  });
  return up.toReversed();
}
