/** Says what of some work a reload would end, a sentence; null while there is none. */
type Tell = () => string | null;

const works = new Set<Tell>();

/** Has a kind of work asked for what a reload would end. @returns stops asking */
export function watchWork(tell: Tell): () => void {
  works.add(tell);
  return () => void works.delete(tell);
}

/** What a reload of this page would end now, a sentence each. */
export const workUnderWay = (): string[] => [...works].flatMap((tell) => tell() ?? []);
