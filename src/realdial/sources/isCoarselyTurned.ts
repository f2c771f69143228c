import type { SourceDescription } from "./sourceDescription";

/** Whether anything coarse turned it: then its stops tell of steps, and not of a hand's aim. */
export const isCoarselyTurned = ({ sources = [] }: { readonly sources?: readonly SourceDescription[] | undefined }) =>
  sources.some(({ isCoarse }) => isCoarse);
