/** Why nothing could be learned of a knob that was turned once left and once right. */
export type NotLearned =
  /** Nothing came. */
  | "nothing"
  /** Both turns sent the same. */
  | "same-both-ways"
  /** More than one thing was moved. */
  | "more-than-one"
  /** It sends where it is and not how far it turned, or it springs back: it has ends. */
  | "has-ends"
  /** The two turns were not of one size. */
  | "uneven";

/** What was learned, or why nothing was. */
export type Learned<Knob> = { readonly knob: Knob } | { readonly failed: NotLearned };

/** How far the counts of two whole turns may lie apart, as a share of their mean: a hand stops within some degrees. */
const EVEN_WITHIN = 0.15;

/** Steps of a turn, by one turn each way. @returns null where the two are not of one size */
export function evenTurn(left: number, right: number): number | null {
  const mean = (Math.abs(left) + Math.abs(right)) / 2;
  return mean > 0 && Math.abs(Math.abs(left) - Math.abs(right)) <= EVEN_WITHIN * mean ? mean : null;
}

/** The one that most of them are. @returns undefined where there is none, or where it makes up less than nine of ten */
export function mostOf<Item>(items: readonly Item[]): Item | undefined {
  const counts = new Map<Item, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  const [most, count = 0] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [];
  return count >= 0.9 * items.length ? most : undefined;
}
