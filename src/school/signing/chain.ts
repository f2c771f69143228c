import { canonicalJson } from "../../drill/canonicalJson";
import { sha256Hex } from "../../drill/sha256";

/** What a school received, as its chain holds it. */
export interface ChainEntry {
  /** From 1 on, without a gap. */
  readonly place: number;
  /** By the server's clock, milliseconds since 1970. */
  readonly at: number;
  /** What was received: a kind of record, an edit, a deletion. */
  readonly what: string;
  /** Id of what was received. */
  readonly ofId: string;
  /** SHA-256 of what was received. */
  readonly sha256: string;
}

/** An entry with its link. */
export interface ChainLink extends ChainEntry {
  /** SHA-256 of the link before and of this entry. */
  readonly link: string;
}

/** The end of a chain: what the next link is made on. */
export type ChainEnd = Pick<ChainLink, "place" | "link">;

/** Where the chain of a school begins: no two schools begin alike. */
export const chainStart = (schoolId: string): ChainEnd => ({
  place: 0,
  link: sha256Hex(canonicalJson({ chain: 1, school: schoolId })),
});

/** The link of an entry: SHA-256 of the canonical JSON of the link before and of every field of the entry. */
export const linkOf = (before: string, { place, at, what, ofId, sha256 }: ChainEntry): string =>
  sha256Hex(canonicalJson([before, place, at, what, ofId, sha256]));

/** Entries put to the end of a chain, in their order. */
export function chained(end: ChainEnd, entries: readonly Omit<ChainEntry, "place">[]): ChainLink[] {
  let last = end;
  return entries.map((entry) => {
    const placed = { ...entry, place: last.place + 1 };
    const made = { ...placed, link: linkOf(last.link, placed) };
    last = made;
    return made;
  });
}

/** The first link that does not follow: a place is missing or comes twice, or a field was changed. */
export interface BrokenLink {
  /** The place that should have come. */
  readonly place: number;
  readonly why: "missing" | "changed";
}

/** Goes along a chain, link by link. Mutable. */
export class ChainWalk {
  private last: ChainEnd;
  private found: BrokenLink | null = null;

  constructor(schoolId: string) {
    this.last = chainStart(schoolId);
  }

  /** The next link, in the order of their places. */
  next(one: ChainLink): void {
    const place = this.last.place + 1;
    if (this.found !== null) return;
    if (one.place !== place) this.found = { place, why: "missing" };
    else if (one.link !== linkOf(this.last.link, one)) this.found = { place, why: "changed" };
    this.last = one;
  }

  /** Where the chain breaks first, or null. */
  get broken(): BrokenLink | null {
    return this.found;
  }

  /** The last link that follows from all before it. */
  get end(): ChainEnd {
    return this.last;
  }
}
