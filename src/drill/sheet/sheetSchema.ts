import * as z from "zod/mini";
import {
  codeName,
  flag,
  list,
  must,
  number,
  oneOf,
  rulesOf,
  share,
  strict,
  text,
  whole,
  within,
} from "../../lock/fieldSchemas";
import { combinationRulesSchema, profileSchema } from "../../lock/profileSchema";
import { DRILL_WORDS } from "../drillWords";
import { TOPICS } from "../questions/question";
import { ADMISSIONS } from "./admission";
import { LOST_SIGHT_RULES } from "./lostSightRule";
import { STATION_KINDS } from "./stationKinds";

const claimed = share(0.5, 0.999);
const graduations = within(0, 5, "graduations");
const seconds = within(1, 36_000, "seconds");
const sheetRule = rulesOf(DRILL_WORDS);

const combinationPolicy = z.discriminatedUnion(
  "policy",
  [
    strict({ policy: z.literal("as-set") }),
    strict({
      policy: z.literal("drawn"),
      rules: z.optional(combinationRulesSchema),
      each: z.optional(oneOf(["try", "station"])),
    }),
    strict({ policy: z.literal("fixed"), list: list(list(number, 2, 6), 1, 50) }),
  ],
  sheetRule("no-policy", {
    choices: ["as-set", "drawn", "fixed"],
    example: { policy: "fixed", list: [[38, 71, 26]] },
  }),
);

const from = z.optional(whole(1, 200));
const sized = <K extends string>(kind: K, size: ReturnType<typeof within>) =>
  strict({ kind: z.literal(kind), size, from });

const condition = z.discriminatedUnion(
  "kind",
  [
    sized("index-offset", within(-5, 5, "graduations")),
    sized("lost-motion", within(0, 2, "graduations")),
    sized("noise", within(0, 1, "graduations")),
    strict({ kind: z.enum(["heavy-dial", "light-dial", "no-cutaway"]), from }),
  ],
  must("one-of", { choices: ["index-offset", "lost-motion", "noise", "heavy-dial", "light-dial", "no-cutaway"] }),
);

const profile = z.union([text(80), profileSchema], sheetRule("no-profile"));

const jobStation = {
  id: text(40),
  title: z.optional(text(120)),
  task: z.optional(text(600)),
  profile,
  help: oneOf(["full", "counts", "silent"]),
  repetitions: whole(1, 200),
  timeLimit_s: z.optional(seconds),
};

const anyStation = {
  ...jobStation,
  conditions: z.optional(list(condition, 0, 10)),
  turnedBy: z.optional(oneOf(ADMISSIONS)),
  lostSight: z.optional(oneOf(LOST_SIGHT_RULES)),
};

const tries = z.optional(whole(0, 200));
const meanTime_s = z.optional(seconds);

const dialingStation = strict({
  kind: z.literal("dialing"),
  ...anyStation,
  combinations: combinationPolicy,
  upTo: z.optional(whole(1, 6)),
  passMarks: strict({
    firstTime: tries,
    claim: z.optional(strict({ rate: claimed, confidence: claimed })),
    stopErrorBias: z.optional(graduations),
    stopErrorSpread: z.optional(graduations),
    faultyTries: tries,
    meanTime_s,
  }),
});

const zeroingStation = strict({
  kind: z.literal("zeroing"),
  ...anyStation,
  tolerance: z.optional(within(0.05, 5, "graduations")),
  readings: z.optional(whole(2, 20)),
  passMarks: strict({ zeroed: tries, refused: tries, meanTime_s }),
});

const changeStation = strict({
  kind: z.literal("change"),
  ...jobStation,
  combinations: combinationPolicy,
  passMarks: strict({ right: tries, faultyTries: tries, meanTime_s }),
});

const troubleStation = strict({
  kind: z.literal("trouble"),
  ...jobStation,
  pool: z.optional(list(codeName(60, "index-slipped"), 1, 40)),
  passMarks: strict({ right: tries, sizeError: z.optional(graduations), meanTime_s }),
});

const handoverStation = strict({
  kind: z.literal("handover"),
  ...jobStation,
  hand: oneOf(["real", "simulated"]),
  fit: z.optional(oneOf(["first"])),
  passMarks: strict({ clean: tries, faultyTries: tries, meanTime_s }),
});

const fittingStation = strict({
  kind: z.literal("fitting"),
  ...jobStation,
  passMarks: strict({ right: tries, faults: z.optional(whole(0, 1000)), meanTime_s }),
});

const serviceStation = strict({
  kind: z.literal("service"),
  ...jobStation,
  passMarks: strict({ right: tries, faults: z.optional(whole(0, 1000)), meanTime_s }),
});

const inspectionStation = strict({
  kind: z.literal("inspection"),
  ...jobStation,
  passMarks: strict({ right: tries, mistakes: z.optional(whole(0, 1000)), meanTime_s }),
});

const topicShare = strict({ topic: oneOf(TOPICS), count: whole(1, 50) });

const sittingRules = strict({
  pauseAllowed: flag,
  onReload: oneOf(["resume", "broken-off"]),
  clockHideable: flag,
  timeLimit_s: z.optional(seconds),
  questions: z.optional(strict({ topics: list(topicShare, 1, TOPICS.length), passMark: whole(0, 350) })),
});

/** Schema of a drill sheet: what single fields may hold. `parseSheet` also checks that they fit each other. */
export const sheetSchema = strict({
  format: z.literal("gatefall-sheet", must("one-of", { choices: ["gatefall-sheet"] })),
  version: z.literal(1, must("only-version", { version: 1 })),
  title: text(120),
  purpose: text(600),
  instructions: z.optional(list(text(400), 0, 20)),
  cautions: z.optional(list(text(400), 0, 20)),
  stations: list(
    z.discriminatedUnion(
      "kind",
      [
        dialingStation,
        zeroingStation,
        changeStation,
        troubleStation,
        handoverStation,
        fittingStation,
        serviceStation,
        inspectionStation,
      ],
      sheetRule("no-station-kind", { known: STATION_KINDS }),
    ),
    1,
    40,
  ),
  order: oneOf(["blocked", "interleaved", "random"]),
  seed: z.optional(whole(0, 2 ** 32 - 1)),
  sitting: z.optional(sittingRules),
  source: z.optional(text(400)),
});

/** The JSON Schema of a sheet as it is published in `shared/sheet.schema.json`. */
export function sheetJsonSchema(): object {
  const schema = z.toJSONSchema(sheetSchema, { io: "input" });
  return { ...schema, title: "Gatefall drill sheet, version 1" };
}
