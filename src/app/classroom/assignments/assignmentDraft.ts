import type { Sheet } from "../../../drill/sheet/sheet";
import { MOST_ATTEMPTS } from "../../../school/assignments/assignment";
import { MOST_EXTRA_TIME } from "../../../school/assignments/extraTime";
import { fullMinute, localMomentText, momentOfLocalText } from "../../parts/localMoment";
import type { Assignment } from "./assignmentWords";

/** An assignment as it stands in its form: nothing of it need be right yet. */
export interface AssignmentDraft {
  /** Null while none was chosen; of one that is changed, where its sheet stays. */
  readonly sheet: Sheet | null;
  readonly kind: Assignment["kind"];
  /** As the fields of date and time show it. */
  readonly from: string;
  readonly until: string;
  readonly hasLimit: boolean;
  readonly attempts: number | undefined;
  readonly isWhole: boolean;
  readonly people: ReadonlySet<string>;
  /** Percent of each person who has other extra time here than on the roster. */
  readonly extraTime: ReadonlyMap<string, number>;
}

const WEEK_MS = 7 * 24 * 3600 * 1000;

/**
 * A new assignment, from now, for a week: a test of one attempt for the whole class, or on the terms of an earlier one.
 *
 * @param now - milliseconds since 1970
 */
export function newDraft(now: number, earlier?: Assignment): AssignmentDraft {
  const from = fullMinute(now);
  const week = { from: localMomentText(from), until: localMomentText(from + WEEK_MS) };
  if (earlier !== undefined) return { ...draftOf(earlier), ...week };
  return {
    sheet: null,
    kind: "test",
    ...week,
    hasLimit: true,
    attempts: 1,
    isWhole: true,
    people: new Set(),
    extraTime: new Map(),
  };
}

/** The form of an assignment that is there. */
export const draftOf = ({ kind, from, until, attempts, people, extraTime }: Assignment): AssignmentDraft => ({
  sheet: null,
  kind,
  from: localMomentText(from),
  until: localMomentText(until),
  hasLimit: attempts !== null,
  attempts: attempts ?? 1,
  isWhole: people === null,
  people: new Set(people ?? []),
  extraTime: new Map(extraTime.map(({ personId, percent }) => [personId, percent])),
});

/** Fields of the form that something can be wrong with. */
type DraftField = Exclude<keyof AssignmentDraft, "kind" | "hasLimit" | "isWhole">;

/** What is wrong with each field, in a sentence. */
export type DraftProblems = Readonly<Partial<Record<DraftField, string>>>;

const isWhole = (value: number | undefined, least: number, most: number): boolean =>
  value !== undefined && Number.isInteger(value) && value >= least && value <= most;

/** What is wrong with the form; nothing where it can be sent. @param before - the assignment that is changed; null for a new one */
export function draftProblems(draft: AssignmentDraft, before: Assignment | null): DraftProblems {
  const from = momentOfLocalText(draft.from, before?.from);
  const until = momentOfLocalText(draft.until, before?.until);
  const isLate = from !== null && until !== null && until <= from;
  const isExtraRight = [...draft.extraTime.values()].every((percent) => isWhole(percent, 0, MOST_EXTRA_TIME));
  return {
    ...(draft.sheet === null && before === null && { sheet: "Choose a sheet." }),
    ...(from === null && { from: "Enter the first day and time to begin it." }),
    ...(until === null && { until: "Enter the last day and time to begin it." }),
    ...(isLate && { until: "It ends before it begins. Enter a later time." }),
    ...(draft.hasLimit &&
      !isWhole(draft.attempts, 1, MOST_ATTEMPTS) && { attempts: `Enter a whole number from 1 to ${MOST_ATTEMPTS}.` }),
    ...(!draft.isWhole && draft.people.size === 0 && { people: "Choose at least one person." }),
    ...(!isExtraRight && { extraTime: `Enter whole numbers of percent from 0 to ${MOST_EXTRA_TIME}.` }),
  };
}

/** The form as it is sent, its sheet apart; only for a form without problems. @param before - the assignment that is changed; null for a new one */
export function termsOf(draft: AssignmentDraft, before: Assignment | null) {
  const isFor = (personId: string) => draft.isWhole || draft.people.has(personId);
  return {
    kind: draft.kind,
    from: momentOfLocalText(draft.from, before?.from),
    until: momentOfLocalText(draft.until, before?.until),
    attempts: draft.hasLimit ? draft.attempts : null,
    people: draft.isWhole ? null : [...draft.people],
    extraTime: [...draft.extraTime].flatMap(([personId, percent]) => (isFor(personId) ? [{ personId, percent }] : [])),
  };
}
