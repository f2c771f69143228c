/** One thing that is varied, all else as usual. */
export interface EdgeAxis {
  readonly name: string;
  readonly unit: string;
  /** Where every film must hold, and where none can. */
  readonly good: number;
  readonly bad: number;
  /** Values are tried so far apart. */
  readonly step: number;
}

/** What a film came to at a value of an axis. */
interface Tried<Film> {
  readonly value: number;
  readonly film: Film;
}

/** The edge on an axis: the last value at which a film holds (null for none), and the films at the next value and at the worst one. */
export interface Edge<Film> {
  readonly last: number | null;
  readonly ends: readonly Tried<Film>[];
}

/** Finds an edge by bisection, the worst value first: what holds there holds on all of the axis. */
export function edgeOf<Film>(
  { good, bad, step }: EdgeAxis,
  filmAt: (value: number) => Film,
  holds: (film: Film) => boolean,
): Edge<Film> {
  const count = Math.round(Math.abs(bad - good) / step);
  const toward = Math.sign(bad - good);
  const valueAt = (k: number) => Number((good + toward * k * step).toFixed(3));
  let [held, failed] = [-1, count + 1];
  while (failed - held > 1) {
    const middle = held === -1 ? 0 : failed > count ? count : (held + failed) >> 1;
    if (holds(filmAt(valueAt(middle)))) held = middle;
    else failed = middle;
  }
  const ends = [Math.min(count, held + 1), count].map((k) => ({ value: valueAt(k), film: filmAt(valueAt(k)) }));
  return { last: held === -1 ? null : valueAt(held), ends };
}

/** A row of the table of edges. */
export function edgeRow<Film>(
  { name, unit }: EdgeAxis,
  { last, ends }: Edge<Film>,
  howItEnds: (film: Film) => string,
): string {
  const held = last === null ? "nowhere" : `${last} ${unit}`.trim();
  return `| ${name} | ${held} | ${ends.map(({ value, film }) => `${value}: ${howItEnds(film)}`).join(" | ")} |`;
}
