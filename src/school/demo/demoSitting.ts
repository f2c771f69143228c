import type * as z from "zod/mini";
import { faultsAtEnd } from "../../dialing/fault";
import { RecordedAttempt } from "../../dialing/hand/recordedAttempt";
import { spunOffStart } from "../../dialing/spunOffStart";
import type { DialingTry } from "../../drill/marking/tryResult";
import { conditionsAt } from "../../drill/sheet/conditionsAt";
import { parseSheet } from "../../drill/sheet/parseSheet";
import { type PlannedTry, planTries } from "../../drill/sheet/planTries";
import type { Sheet } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { sittingQuestions } from "../../drill/sitting/sittingQuestions";
import { tryChance } from "../../drill/sitting/tryChance";
import type { Milliseconds } from "../../lock/dial";
import { drawPlan } from "../../progress/demo/demoAttempt";
import { handMotion } from "../../progress/demo/handMotion";
import { attemptNote } from "../../records/attempt/attemptNote";
import { stationOutcome } from "../../records/attempt/stationOutcome";
import { conditionsOf } from "../../records/attemptConditions";
import { attemptOutcome } from "../../records/attemptOutcome";
import type { AttemptRecord } from "../../records/attemptRecord";
import { exerciseOf } from "../../records/exercise";
import { motionText } from "../../records/motion/traceCodec";
import { type RecordedAnswer, type SittingRecord, sittingRecord } from "../../records/sitting/sittingRecord";
import { tryId } from "../../records/tryOfSitting";
import { type Chance, seededChance } from "../../statistics/chance";
import type { givenSitting } from "../wire/assignmentsWire";
import type { Apprentice } from "./demoClass";

/** Reading the instructions; from one try to the next; thinking over a question. */
const PAUSES = { begin: 20_000, between: 6000, question: 12_000 } as const satisfies Record<string, Milliseconds>;

/** Share of questions that the least of the class answers right. */
const LEAST_RIGHT = 0.5;

/** Whoever sits a sitting, and when. */
export interface Sitting {
  readonly given: z.infer<typeof givenSitting>;
  readonly apprentice: Apprentice;
  readonly personId: string;
  readonly appVersion: string;
}

/** A try that was dialed: what it came to, its motion, its record for the logbook, and when it ended. */
interface DialedTry {
  readonly result: DialingTry;
  readonly motion: string;
  readonly record: AttemptRecord;
  /** Milliseconds since 1970. */
  readonly endedAt: number;
}

/** A sitting that was sat. */
export interface SatSitting {
  readonly record: SittingRecord;
  readonly tries: readonly DialedTry[];
  /** Milliseconds since 1970. */
  readonly endedAt: number;
}

/** A simulated hand dials one try until the lock has answered. */
function dialed(sheet: Sheet, plan: PlannedTry, index: number, { given, apprentice }: Sitting, chance: Chance) {
  const station = sheet.stations[plan.station];
  if (station?.kind !== "dialing") throw new RangeError("a simulated hand sits sheets of dialing alone");
  const profile = stationProfile(station);
  const combination = plan.combination ?? [];
  const start = spunOffStart(profile, combination, tryChance(given.seed, index));
  const recorded = new RecordedAttempt(profile, combination, start);
  const drawn = drawPlan(combination, apprentice.hand, chance);
  const { positions, times_ms } = handMotion(profile, combination, start.dial, drawn, chance);
  let hand = start.dial;
  for (const [k, position] of positions.entries()) {
    const facts = recorded.turnBy(position - hand, times_ms[k] ?? 0);
    hand = position;
    if (facts.some(({ type }) => type === "bolt.retracted" || type === "draw.refused")) break;
  }
  return { station, profile, recorded };
}

function sitTry(
  sheet: Sheet,
  plan: PlannedTry,
  place: { readonly index: number; readonly at: number },
  sitting: Sitting,
  chance: Chance,
): DialedTry {
  const { index, at } = place;
  const { station, profile, recorded } = dialed(sheet, plan, index, sitting, chance);
  const { attempt, recording, time_ms } = recorded;
  const { opened, stops } = attemptOutcome(attempt);
  const result: DialingTry = {
    kind: "dialing",
    station: plan.station,
    repetition: plan.repetition,
    combination: attempt.combination,
    opened,
    stopErrors: attempt.combination.map((_, k) => stops.findLast(({ step }) => step === k + 1)?.error ?? null),
    faults: faultsAtEnd(attempt).map(({ code, number, size }) => ({ code, number, size })),
    time_ms,
    isBrokenOff: false,
  };
  const endedAt = at + time_ms;
  const { sittingId } = sitting.given;
  const frame = {
    id: tryId(sittingId, index),
    createdAt: endedAt,
    updatedAt: endedAt,
    startedAt: at,
    duration_ms: time_ms,
    exercise: exerciseOf(station.upTo),
    help: station.help,
    conditions: conditionsOf(conditionsAt(station, plan.repetition)),
    sittingId,
  };
  const note = attemptNote(frame, { profile, combination: attempt.combination }, stationOutcome(attempt, station));
  const record = { ...note, personId: sitting.personId };
  return { result, motion: motionText(recording), record, endedAt };
}

/** Answers to its questions: right as often as the skill goes. */
function answersOf(sheet: Sheet, seed: number, { skill }: Apprentice, chance: Chance): RecordedAnswer[] {
  return sittingQuestions(sheet, seed).map(({ question, order }) => {
    const isRight = chance() < LEAST_RIGHT + (1 - LEAST_RIGHT) * skill;
    const wrong = order.filter((choice) => choice !== question.answer);
    const choice = isRight ? question.answer : (wrong[Math.floor(chance() * wrong.length)] ?? question.answer);
    return { questionId: question.id, choice, isRight: choice === question.answer };
  });
}

/**
 * A sitting that a server gave, sat by a simulated hand: each try on its own lock, the questions after them, and the record
 * that comes of it, as a bench makes it.
 *
 * @throws {RangeError} for a sheet that asks for more than dialing and questions
 */
export function satByHand(sitting: Sitting, chance: Chance): SatSitting {
  const { given, apprentice, personId, appVersion } = sitting;
  const sheet = parseSheet(given.sheet);
  const tries: DialedTry[] = [];
  const startedAt = given.begunAt + PAUSES.begin;
  let at = startedAt;
  for (const [index, plan] of planTries(sheet, seededChance(given.seed)).entries()) {
    const one = sitTry(sheet, plan, { index, at }, sitting, chance);
    tries.push(one);
    at = one.endedAt + PAUSES.between;
  }
  const answers = answersOf(sheet, given.seed, apprentice, chance);
  const endedAt = at + answers.length * PAUSES.question;
  const record = sittingRecord({
    sheet,
    seed: given.seed,
    seedFrom: given.seedFrom,
    appVersion,
    person: apprentice.name,
    personId,
    ...(given.extraTime > 0 && { extraTime_percent: given.extraTime }),
    startedAt: new Date(startedAt).toISOString(),
    worked_ms: endedAt - startedAt,
    pauses: 0,
    interruptions: 0,
    breaks: [],
    clockJumps: [],
    tries: tries.map(({ result }) => result),
    motions: tries.map(({ motion }) => motion),
    answers,
    ended: "finished",
  });
  return { record: JSON.parse(JSON.stringify(record)), tries, endedAt };
}
