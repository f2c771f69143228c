import type { SourceDescription } from "./sourceDescription";
import type { SourceKind } from "./sourceKinds";

/** What turned the dial of a try from its first move to its last, or that it was more than one thing. */
export type Hand = SourceKind | "mixed";

/** A record of a dial that was turned; one that does not say by what was turned on the screen. */
export interface Turned {
  readonly sources?: readonly Pick<SourceDescription, "kind">[] | undefined;
}

/** The hand of a try. */
export function handOf({ sources = [] }: Turned): Hand {
  const [first = "screen", ...others] = sources.map(({ kind }) => kind);
  return others.every((kind) => kind === first) ? first : "mixed";
}
