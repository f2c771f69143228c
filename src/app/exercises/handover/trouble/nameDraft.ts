import type { Trouble, TroubleKind } from "../../../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../../../handover/trouble/troubleGuide";

/** What stands in the form so far. */
export interface NameDraft {
  readonly kind: TroubleKind | null;
  readonly part: string;
  readonly size: number | undefined;
  readonly way: "left" | "right" | "";
}

/** A form that nothing has been written into. */
export const EMPTY_DRAFT: NameDraft = { kind: null, part: "", size: undefined, way: "" };

/** Largest size that anyone may name. */
const MOST = 100;

/** What a form still wants. */
export interface DraftProblem {
  readonly field: keyof NameDraft;
  /** One sentence. */
  readonly says: string;
}

/** What is still missing, in the order of the form. */
function draftProblem(draft: NameDraft, kind: TroubleKind): DraftProblem | undefined {
  const { part, hasWay } = TROUBLE_GUIDE[kind];
  const amount = draft.size ?? Number.NaN;
  const checks: readonly (readonly [boolean, DraftProblem])[] = [
    [part === "wheel" && draft.part === "", { field: "part", says: "Say which wheel." }],
    [part === "direction" && draft.part === "", { field: "part", says: "Say toward which side." }],
    [part === "side" && draft.part === "", { field: "part", says: "Say in which direction it was set." }],
    [!(amount >= 0 && amount <= MOST), { field: "size", says: `Say how much, a number from 0 to ${MOST}.` }],
    [hasWay && draft.way === "", { field: "way", says: "Say which way: left or right." }],
  ];
  return checks.find(([isWrong]) => isWrong)?.[1];
}

/** The diagnosis that a form states, or what it still wants. */
export function readDraft(draft: NameDraft): Trouble | DraftProblem {
  const { kind } = draft;
  if (kind === null) return { field: "kind", says: "Choose a defect." };
  const { part, hasWay } = TROUBLE_GUIDE[kind];
  const sign = hasWay && draft.way === "right" ? -1 : 1;
  return draftProblem(draft, kind) ?? { kind, part: part === null ? null : draft.part, size: sign * (draft.size ?? 0) };
}
