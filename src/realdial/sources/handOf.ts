import type { SourceDescription, SourceKind } from "./sourceDescription";

/** What turned the dial of a try from its first move to its last, or that it was more than one thing. */
export type Hand = SourceKind | "mixed";

/** A record of a dial that was turned; one that does not say by what was turned on the screen. */
interface Turned {
  readonly sources?: readonly Pick<SourceDescription, "kind">[] | undefined;
}

/** The hand of a try. */
export function handOf({ sources = [] }: Turned): Hand {
  const [first = "screen", ...others] = sources.map(({ kind }) => kind);
  return others.every((kind) => kind === first) ? first : "mixed";
}

/** Every hand of some tries, the one used last first. @param tries - oldest first */
export const handsOf = (tries: readonly Turned[]): Hand[] => [...new Set(tries.map(handOf).reverse())];
