import type { Trouble, TroubleKind } from "../../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../../handover/trouble/troubleGuide";

/** What stands in the form so far. */
export interface NameDraft {
  readonly kind: TroubleKind | null;
  readonly part: string;
  readonly size: string;
  readonly way: "left" | "right" | "";
}

/** A form that nothing has been written into. */
export const EMPTY_DRAFT: NameDraft = { kind: null, part: "", size: "", way: "" };

/** Largest size that anyone may name. */
const MOST = 100;

/** The size as written, a comma as good as a point; NaN where it is none. */
const amountOf = ({ size }: NameDraft) => (size.trim() === "" ? Number.NaN : Number(size.replace(",", ".")));

/** What is still missing, in the order of the form. */
function draftProblem(draft: NameDraft, kind: TroubleKind): string | undefined {
  const { part, hasWay } = TROUBLE_GUIDE[kind];
  const amount = amountOf(draft);
  const checks: readonly (readonly [boolean, string])[] = [
    [part === "wheel" && draft.part === "", "Say which wheel."],
    [part === "side" && draft.part === "", "Say which side it was set from."],
    [!(amount >= 0 && amount <= MOST), `Say how much, a number from 0 to ${MOST}.`],
    [hasWay && draft.way === "", "Say which way: left or right."],
  ];
  return checks.find(([isWrong]) => isWrong)?.[1];
}

/** The diagnosis that a form states, or a sentence that says what it still wants. */
export function readDraft(draft: NameDraft): Trouble | string {
  const { kind } = draft;
  if (kind === null) return "Choose a condition.";
  const { part, hasWay } = TROUBLE_GUIDE[kind];
  const sign = hasWay && draft.way === "right" ? -1 : 1;
  return draftProblem(draft, kind) ?? { kind, part: part === null ? null : draft.part, size: sign * amountOf(draft) };
}
