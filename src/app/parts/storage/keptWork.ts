import { safeText } from "./safeTexts";
import { setTextAside } from "./setAside";

/** A kind of work that is stored as a text while it is under way. */
export interface WorkKind<Kept> {
  /** "service visit" */
  readonly noun: string;
  /** Where it goes on: "Fitting" */
  readonly page: string;
  /** What is begun where a stored one cannot be read, and how, in a sentence. */
  readonly instead: string;
  /** Reads a stored one. @throws where it is none */
  readonly read: (value: unknown) => Kept;
}

/** What was found of some work. */
export interface RecalledWork<Kept> {
  readonly kept: Kept | null;
  /** What could not be read, and what became of it, in sentences; null where nothing was wrong. */
  readonly problem: string | null;
}

/** Reads a stored text; null where it cannot be read. */
export function readWork<Kept>(text: string | null, { read }: WorkKind<Kept>): Kept | null {
  try {
    return text === null ? null : read(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Sets aside a stored text that cannot go on, and begins something else. */
export function setWorkAside(key: string, { noun, instead }: WorkKind<unknown>): RecalledWork<never> {
  const copy = setTextAside(key)
    ? "A copy is kept in this browser."
    : "There is no room for a copy: what you do next replaces it.";
  return { kept: null, problem: `The ${noun} that this browser saved cannot be read. ${copy} ${instead}` };
}

/** Looks for the work that is stored under a key. What cannot be read is set aside, and told. */
export function recallWork<Kept>(key: string, kind: WorkKind<Kept>): RecalledWork<Kept> {
  const text = safeText(key);
  const kept = readWork(text, kind);
  return text !== null && kept === null ? setWorkAside(key, kind) : { kept, problem: null };
}
