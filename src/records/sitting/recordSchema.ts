import * as z from "zod/mini";
import type { CriterionKind } from "../../drill/marking/stationAsks";
import {
  flag,
  matching,
  must,
  number,
  oneOf,
  share,
  shortList,
  shortText,
  strict,
  whole,
} from "../../lock/fieldSchemas";
import { recordings } from "../motion/recordings";
import { count, hash, span } from "./schemaParts";
import { NOTICE, type SittingRecord } from "./sittingRecord";
import { trySchema } from "./trySchemas";

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
  "fit-faults",
  "visit-faults",
  "mistakes",
  "mean-time",
  "questions",
] as const satisfies readonly CriterionKind[];

const claimed = share(0, 1);

const criterion = strict({
  kind: oneOf(CRITERIA),
  station: z.nullable(whole(0, 39)),
  place: shortText(200),
  limit: number,
  of: count,
  claim: z.optional(strict({ rate: claimed, confidence: claimed })),
  asks: shortText(1000),
});

const mark = strict({
  criterion,
  verdict: oneOf(VERDICTS),
  value: z.nullable(number),
  says: shortText(1000),
  sureness: shortText(1000),
  method: z.optional(shortText(1000)),
});

const marking = strict({
  verdict: oneOf(VERDICTS),
  reasons: shortList(shortText(3000), 300),
  marks: shortList(mark, 300),
});

const answer = strict({ questionId: shortText(80), choice: whole(0, 9), isRight: flag });

const sittingBreak = strict({ kind: oneOf(["pause", "reload"]), at_ms: span, length_ms: z.nullable(span) });

const clockJump = strict({ at_ms: span, by_ms: number });

const aMoment = must("moment", { example: "2026-11-20T08:00:00.000Z" });
/** However finely a second is divided. */
const moment = z.iso.datetime(aMoment).check(z.maxLength(40, aMoment));

const version = matching(/^\d{1,4}\.\d{1,4}\.\d{1,4}$/, must("release", { example: "0.3.0" }));

/** Schema of a sitting's record; its sheet is read by `parseSheet`. It has every field of a record and no other. */
export const recordSchema = strict({
  format: z.literal("gatefall-sitting"),
  version: z.literal(1),
  notice: z.literal(NOTICE, must("one-of", { choices: [NOTICE] })),
  sheet: z.unknown(),
  sheetSha256: z.optional(hash),
  seed: whole(0, 2 ** 32 - 1),
  seedFrom: z.optional(oneOf(["drawn", "sheet", "address", "server"])),
  extraTime_percent: z.optional(whole(1, 300)),
  appVersion: version,
  person: z.optional(shortText(200)),
  personId: z.optional(shortText(1200)),
  startedAt: moment,
  worked_ms: span,
  pauses: count,
  interruptions: count,
  breaks: z.optional(shortList(sittingBreak, 100_000)),
  clockJumps: z.optional(shortList(clockJump, 100_000)),
  tries: shortList(trySchema, 8000),
  motions: z.optional(recordings),
  answers: shortList(answer, 500),
  ended: oneOf(["finished", "time", "broken-off"]),
  profileHashes: shortList(hash, 40),
  marking,
} satisfies Readonly<Record<keyof SittingRecord, z.core.SomeType>>);
