import { sheetSha256 } from "../sheet/sheetFingerprint";
import { sheetId } from "../sheet/sheetId";
import { sittingPlan } from "../sitting/sittingPlan";
import type { Lesson } from "./course";

/** What a list shows of a lesson. It needs neither its sheet nor what reads one. */
export interface LessonGlance {
  /** Counted from 1. */
  readonly number: number;
  readonly title: string;
  /** Its sheet, as part of an address. */
  readonly sheetId: string;
  /** SHA-256 of what counts in its sheet, 64 hexadecimal digits. */
  readonly sheetSha256: string;
  /** The same of its sheet in earlier versions, where to have finished that is to have done the lesson. */
  readonly earlier?: readonly string[] | undefined;
  /** One line. */
  readonly teaches: string;
  /** Estimated working time, whole minutes. */
  readonly minutes: number;
  readonly tries: number;
  readonly questions: number;
  /** Whether it is sat under rules. */
  readonly isTest: boolean;
}

/** A lesson at a glance. `npm run schema` stores it for the lessons that come with the trainer. */
export function lessonGlance({ number, sheet, teaches, minutes, earlier }: Lesson): LessonGlance {
  const { tries, questions } = sittingPlan(sheet);
  const isTest = sheet.sitting !== undefined;
  const named = { number, title: sheet.title, sheetId: sheetId(sheet), sheetSha256: sheetSha256(sheet) };
  return { ...named, ...(earlier && { earlier }), teaches, minutes, tries, questions, isTest };
}
