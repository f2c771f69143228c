import * as z from "zod/mini";
import type { CriterionKind } from "../../drill/marking/markingScheme";
import { count, flag, hash, list, object, oneOf, span, text, whole, within } from "./schemaParts";
import { NOTICE, type SittingRecord } from "./sittingRecord";
import { trySchema } from "./trySchemas";

const VERSION_WORDS = "must be a version such as 0.3.0";

const VERDICTS = ["pass", "fail", "not shown"] as const;

const CRITERIA = [
  "first-time",
  "claim",
  "stop-error-bias",
  "stop-error-spread",
  "faulty-tries",
  "zeroed",
  "refused",
  "right",
  "size-error",
  "clean",
  "mean-time",
  "questions",
] as const satisfies readonly CriterionKind[];

const share = within(0, 1, "1");
const anyNumber = z.number({ error: "must be a number" });

const criterion = object(
  {
    kind: oneOf(CRITERIA),
    station: z.nullable(whole(0, 39)),
    place: text(200),
    limit: anyNumber,
    of: count,
    claim: z.optional(object({ rate: share, confidence: share }, "a claim")),
    asks: text(1000),
  },
  "a mark that is asked for",
);

const mark = object(
  { criterion, verdict: oneOf(VERDICTS), value: z.nullable(anyNumber), says: text(1000), sureness: text(1000) },
  "a mark",
);

const marking = object(
  { verdict: oneOf(VERDICTS), reasons: list(text(3000), 300), marks: list(mark, 300) },
  "the marks of a sitting",
);

const answer = object({ questionId: text(80), choice: whole(0, 9), isRight: flag }, "an answer");

const sittingBreak = object(
  { kind: oneOf(["pause", "reload"]), at_ms: span, length_ms: z.nullable(span) },
  "a pause or a reload",
);

const clockJump = object({ at_ms: span, by_ms: anyNumber }, "a jump of the clock");

const moment = z.iso.datetime({ error: "must be a date and time such as 2026-11-20T08:00:00.000Z" });

const version = z
  .string({ error: VERSION_WORDS })
  .check(z.regex(/^\d{1,4}\.\d{1,4}\.\d{1,4}$/, { error: VERSION_WORDS }));

/** A packed motion, base64: some minutes of dialing are a few thousand characters. */
const recording = z.nullable(text(4_000_000));

/** Schema of a sitting's record; its sheet is read by `parseSheet`. It has every field of a record and no other. */
export const recordSchema = object(
  {
    format: z.literal("gatefall-sitting"),
    version: z.literal(1),
    notice: z.literal(NOTICE, { error: `must be "${NOTICE}"` }),
    sheet: z.unknown(),
    sheetSha256: z.optional(hash),
    seed: whole(0, 2 ** 32 - 1),
    seedFrom: z.optional(oneOf(["drawn", "sheet", "address"])),
    appVersion: version,
    person: z.optional(text(200)),
    personId: z.optional(text(1200)),
    startedAt: moment,
    worked_ms: span,
    pauses: count,
    interruptions: count,
    breaks: z.optional(list(sittingBreak, 100_000)),
    clockJumps: z.optional(list(clockJump, 100_000)),
    tries: list(trySchema, 8000),
    motions: z.optional(list(recording, 8000)),
    answers: list(answer, 500),
    ended: oneOf(["finished", "time", "broken-off"]),
    profileHashes: list(hash, 40),
    marking,
  } satisfies Readonly<Record<keyof SittingRecord, z.core.SomeType>>,
  "the record of a sitting",
);
