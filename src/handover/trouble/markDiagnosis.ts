import { isDiagnosisRight } from "../../drill/marking/jobRule";
import { type Evidence, evidenceIn, type Observation } from "./observation";
import type { Trouble } from "./trouble";
import { TROUBLE_GUIDE } from "./troubleGuide";
import { evidenceWords, partWords, troubleSentence, troubleSizeWords } from "./troubleWords";

/** A diagnosis held against the truth. */
export interface DiagnosisMark {
  /** Whether kind and, where there is one, place are right. */
  readonly isKindRight: boolean;
  /** Named minus true, in the unit of the kind; null where the kind named is another. */
  readonly sizeError: number | null;
  readonly isSizeWithin: boolean;
  /** What would have shown the condition named and was not looked at. */
  readonly missing: readonly Evidence[];
  /** Whether the diagnosis is right, by the rule of every diagnosis. */
  readonly isRight: boolean;
  /** One for the kind and one for its size; none for a guess. */
  readonly points: { readonly kind: 0 | 1; readonly size: 0 | 1 };
  /** The sentence that comes first. */
  readonly headline: string;
}

const pointFor = (isEarned: boolean): 0 | 1 => (isEarned ? 1 : 0);

function sizeWords(truth: Trouble, error: number, isWithin: boolean): string {
  const { tolerance, unit } = TROUBLE_GUIDE[truth.kind];
  const off = Math.abs(error) < 0.005 ? "you named it exactly" : `you are off by ${Math.abs(error).toFixed(2)}`;
  return `Its size is ${troubleSizeWords(truth, true)}; ${off}, ${isWithin ? "within" : "outside"} the ${tolerance} ${unit} allowed.`;
}

function headlineOf(
  truth: Trouble,
  named: Trouble,
  mark: Omit<DiagnosisMark, "headline" | "points" | "isRight">,
): string {
  if (named.kind !== truth.kind)
    return `That is not it. You named: ${troubleSentence(named)}. It is: ${troubleSentence(truth)}.`;
  if (!mark.isKindRight) {
    return `The right defect, in the wrong place: ${partWords(named)} was named, and it is ${partWords(truth)}, ${troubleSizeWords(truth)}.`;
  }
  const size = sizeWords(truth, mark.sizeError ?? 0, mark.isSizeWithin);
  if (mark.missing.length > 0) {
    return `Right, but a guess: you have not ${evidenceWords(mark.missing)}, so it earns no points. ${size}`;
  }
  const title = TROUBLE_GUIDE[truth.kind].title.toLowerCase();
  return mark.isSizeWithin ? `Right: ${title}. ${size}` : `The right defect, ${title}, but not its size. ${size}`;
}

/**
 * Marks a diagnosis on kind and size.
 *
 * A kind counts only where what shows it has been looked at, so naming at random earns nothing; a size counts only with
 * its kind.
 *
 * @param log - all that was seen before the condition was named
 */
export function markDiagnosis(truth: Trouble, named: Trouble, log: readonly Observation[]): DiagnosisMark {
  const { tolerance, needs } = TROUBLE_GUIDE[named.kind];
  const seen = evidenceIn(log);
  const isKindRight = named.kind === truth.kind && named.part === truth.part;
  const sizeError = named.kind === truth.kind ? named.size - truth.size : null;
  const mark = {
    isKindRight,
    sizeError,
    isSizeWithin: isKindRight && sizeError !== null && Math.abs(sizeError) <= tolerance,
    missing: needs.filter((one) => !seen.has(one)),
  };
  const isRight = isDiagnosisRight({ isKindRight, isGuess: mark.missing.length > 0 });
  return {
    ...mark,
    isRight,
    points: { kind: pointFor(isRight), size: pointFor(isRight && mark.isSizeWithin) },
    headline: headlineOf(truth, named, mark),
  };
}
