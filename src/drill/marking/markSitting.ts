import type { Sheet } from "../sheet/sheet";
import type { Evidence, Judged, Verdict } from "./evidence";
import { isAdmitted } from "./isAdmitted";
import { judgeCriterion } from "./judgeCriterion";
import { isDoubtAdmitted } from "./lostSight";
import type { Criterion, MarkingScheme } from "./markingScheme";
import type { TryResult } from "./tryResult";

/** What came of a sitting, to be marked. */
export interface SittingResults {
  readonly tries: readonly TryResult[];
  /** Whether each question answered was answered right. */
  readonly answers: readonly boolean[];
  /** How it ended. What is missing after the time ran out counts as missed; what was broken off is left open. */
  readonly ended: "finished" | "time" | "broken-off";
}

/** One criterion, marked. */
export interface Mark extends Judged {
  readonly criterion: Criterion;
}

/** A sitting, marked. */
export interface Marking {
  readonly verdict: Verdict;
  /** Why, one sentence each. */
  readonly reasons: readonly string[];
  readonly marks: readonly Mark[];
}

function evidenceFor(criterion: Criterion, scheme: MarkingScheme, sheet: Sheet, results: SittingResults): Evidence {
  const station = criterion.station === null ? undefined : sheet.stations[criterion.station];
  const here = results.tries.filter((one) => one.station === criterion.station && one.kind === station?.kind);
  const dialed = here.filter((one) => one.kind === "dialing");
  const done = criterion.kind === "questions" ? results.answers.length : here.length;
  return {
    criterion,
    scheme,
    station,
    made: here,
    // Stops of a source that is not admitted, or that lost the hand, speak neither for nor against the hand.
    dialed: dialed.filter((one) => station !== undefined && isAdmitted(one, station) && isDoubtAdmitted(one, station)),
    zeroed: here.filter((one) => one.kind === "zeroing"),
    answers: results.answers,
    open: results.ended === "time" ? 0 : Math.max(0, criterion.of - done),
  };
}

const overall = (marks: readonly Mark[]): Verdict => {
  if (marks.some(({ verdict }) => verdict === "fail")) return "fail";
  return marks.length > 0 && marks.every(({ verdict }) => verdict === "pass") ? "pass" : "not shown";
};

const reasonsFor = (marks: readonly Mark[], verdict: Verdict): string[] => {
  if (marks.length === 0) return ["This sheet asks for no marks."];
  if (verdict === "pass") return ["Every mark is reached."];
  return marks
    .filter((mark) => mark.verdict === verdict)
    .map(
      ({ criterion, says }) =>
        `${criterion.place}: ${criterion.asks} ${verdict === "fail" ? "Missed" : "Not shown"}: ${says}.`,
    );
};

/**
 * Marks a sitting by a scheme.
 *
 * It passes where every criterion passes, fails where one fails, and else is not shown: the tries leave it open.
 *
 * @param scheme - made from the same sheet
 */
export function markSitting(scheme: MarkingScheme, sheet: Sheet, results: SittingResults): Marking {
  const marks = scheme.criteria.map((criterion): Mark => {
    return { criterion, ...judgeCriterion(evidenceFor(criterion, scheme, sheet, results)) };
  });
  const verdict = overall(marks);
  return { verdict, reasons: reasonsFor(marks, verdict), marks };
}
