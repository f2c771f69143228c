import { type ComponentType, type ReactNode, startTransition, useEffect, useState } from "react";
import { areFilesGone } from "./filesGone";

interface Fetched<Props> {
  readonly Part: ComponentType<Props> | null;
  readonly failure: { readonly error: unknown } | null;
}

/** A part that can be fetched before it is drawn. */
export type LaterPart<Props> = ComponentType<Props> & { readonly fetchAhead: () => Promise<unknown> };

/**
 * A part of the app that is fetched when it is first asked for, and drawn the moment it is there. React's own `lazy` holds
 * back what it reveals until its stand-in has stood for 300 ms, which is longer than these parts take to come.
 *
 * @param standIn - shown until then
 * @param Gone - shown in its place where its files cannot be had; left out, the page that it is the whole of says so
 */
export function fetchedLater<Props extends object>(
  fetchPart: () => Promise<ComponentType<Props>>,
  standIn: ReactNode,
  Gone?: ComponentType<Props>,
): LaterPart<Props> {
  let known: ComponentType<Props> | null = null;
  const fetchAhead = async () => {
    known ??= await fetchPart();
    return known;
  };
  function FetchedLater(props: Props) {
    const [{ Part, failure }, setFetched] = useState<Fetched<Props>>({ Part: known, failure: null });
    // biome-ignore lint/correctness/useExhaustiveDependencies: once; whoever fetches ahead may be done since it was first drawn
    useEffect(() => {
      if (Part !== null) return;
      fetchAhead().then(
        // In small pieces: it may be large, and a hand may be turning a dial meanwhile.
        (part) => startTransition(() => setFetched({ Part: part, failure: null })),
        (error) => setFetched({ Part: null, failure: { error } }),
      );
    }, []);
    // Asked for again, it is fetched again.
    if (failure !== null && Gone !== undefined && areFilesGone(failure.error)) return <Gone {...props} />;
    // For the boundary round the page.
    if (failure !== null) throw failure.error;
    return Part === null ? standIn : <Part {...props} />;
  }
  return Object.assign(FetchedLater, { fetchAhead });
}
