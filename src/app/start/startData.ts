import { SHIPPED_LESSONS } from "../../drill/course/shippedLessons";
import { type CourseProgress, courseProgress } from "../../progress/courseProgress";
import { type DailyPractice, dailyPractice } from "../../progress/dailyPractice";
import { finishedSheet } from "../../progress/finishedSheet";
import { type NumberToBeat, numberToBeat } from "../../progress/numberToBeat";
import { ofHand } from "../../progress/oneHand";
import { type WhatNext, whatNext } from "../../progress/whatNext";
import { toldAttempts, toldJobs } from "../../store/toldTries";
import { recordsOfKind } from "../../store/wholeLogbook";
import type { CurrentLogbook } from "../keeping/currentLogbook";
import { whoPractices } from "../keeping/keep";
import { FIRST_COURSE } from "./firstVisit";

/** What the start page shows of whoever practices here. */
export interface StartData {
  readonly name: string | null;
  readonly progress: CourseProgress;
  readonly daily: DailyPractice | null;
  readonly toBeat: NumberToBeat | null;
  /** The hand that daily practice and number to beat are of, and all that were tried. */
  readonly turned: Pick<WhatNext, "hand" | "hands">;
  /** Whether anything was practiced here before. */
  readonly isReturning: boolean;
}

/** Before anybody has practiced here, and while the logbook is still opening. */
export const FIRST_VISIT: StartData = {
  name: null,
  progress: FIRST_COURSE,
  daily: null,
  toBeat: null,
  turned: { hand: "screen", hands: ["screen"] },
  isReturning: false,
};

/** Reads it from the logbook. @throws {LogbookError} when the storage fails */
export async function startData({ logbook }: CurrentLogbook): Promise<StartData> {
  const person = await whoPractices();
  if (person === null) return FIRST_VISIT;
  const [attempts, jobs, sittings, declarations] = await Promise.all([
    toldAttempts(logbook, { personId: person.id }),
    toldJobs(logbook, person.id),
    recordsOfKind(logbook, "sittings"),
    recordsOfKind(logbook, "declarations"),
  ]);
  const isOwn = ({ personId }: { readonly personId: string }) => personId === person.id;
  const own = sittings.filter(isOwn);
  const now = new Date();
  const next = whatNext(attempts, declarations.filter(isOwn), now.getTime(), now.getTimezoneOffset(), jobs);
  return {
    name: person.name,
    progress: courseProgress(
      SHIPPED_LESSONS,
      own.map(finishedSheet).filter((one) => one !== null),
    ),
    daily: dailyPractice(next),
    toBeat: numberToBeat(ofHand(attempts, next.hand)),
    turned: next,
    isReturning: attempts.length > 0 || jobs.length > 0 || own.length > 0,
  };
}
