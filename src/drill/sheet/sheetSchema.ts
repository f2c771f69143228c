import * as z from "zod/mini";
import { combinationRulesSchema, profileSchema } from "../../lock/profileSchema";
import { TOPICS } from "../questions/question";
import { STATION_KINDS } from "./sheet";

const text = (most: number) => {
  const words = `must be a text of 1 to ${most} characters`;
  return z.string({ error: words }).check(z.minLength(1, { error: words }), z.maxLength(most, { error: words }));
};

const whole = (low: number, high: number) => {
  const words = `must be a whole number from ${low} to ${high}`;
  return z
    .number({ error: words })
    .check(z.int({ error: words }), z.gte(low, { error: words }), z.lte(high, { error: words }));
};

const within = (low: number, high: number, unit: string) => {
  const words = `must be a number of ${unit} from ${low} to ${high}`;
  return z.number({ error: words }).check(z.gte(low, { error: words }), z.lte(high, { error: words }));
};

const share = z
  .number({ error: "must be a share between 0 and 1, such as 0.9" })
  .check(
    z.gte(0.5, { error: "must be a share from 0.5 to 0.999, such as 0.9" }),
    z.lte(0.999, { error: "must be a share from 0.5 to 0.999, such as 0.9" }),
  );

const flag = z.boolean({ error: "must be true or false" });
const graduations = within(0, 5, "graduations");
const seconds = within(1, 36_000, "seconds");

const list = <T extends z.core.SomeType>(item: T, low: number, high: number) => {
  const words = `must be a list of ${low} to ${high}`;
  return z.array(item, { error: words }).check(z.minLength(low, { error: words }), z.maxLength(high, { error: words }));
};

const object = <T extends z.core.$ZodLooseShape>(shape: T, words: string) => z.strictObject(shape, { error: words });

const combinationPolicy = z.discriminatedUnion(
  "policy",
  [
    object({ policy: z.literal("as-set") }, "must be an object"),
    object(
      {
        policy: z.literal("drawn"),
        rules: z.optional(combinationRulesSchema),
        each: z.optional(z.enum(["try", "station"], { error: 'must be "try" or "station"' })),
      },
      "must be an object",
    ),
    object(
      {
        policy: z.literal("fixed"),
        list: list(list(z.number({ error: "must be a number" }), 2, 6), 1, 50),
      },
      "must be an object",
    ),
  ],
  { error: 'must be one of {"policy":"as-set"}, {"policy":"drawn"} and {"policy":"fixed","list":[[38,71,26]]}' },
);

const from = z.optional(whole(1, 200));
const sized = <K extends string>(kind: K, size: ReturnType<typeof within>) =>
  object({ kind: z.literal(kind), size, from }, "must be an object");

const condition = z.discriminatedUnion(
  "kind",
  [
    sized("index-offset", within(-5, 5, "graduations")),
    sized("lost-motion", within(0, 2, "graduations")),
    sized("noise", within(0, 1, "graduations")),
    object({ kind: z.enum(["heavy-dial", "light-dial", "no-cutaway"]), from }, "must be an object"),
  ],
  { error: "must be an index-offset, lost-motion, noise, heavy-dial, light-dial or no-cutaway" },
);

const profile = z.union([text(80), profileSchema], { error: "must be the id of a shipped profile, or a whole one" });

const jobStation = {
  id: text(40),
  title: z.optional(text(120)),
  task: z.optional(text(600)),
  profile,
  help: z.enum(["full", "counts", "silent"], { error: 'must be "full", "counts" or "silent"' }),
  repetitions: whole(1, 200),
  timeLimit_s: z.optional(seconds),
};

const anyStation = { ...jobStation, conditions: z.optional(list(condition, 0, 10)) };

const passMarks = <T extends z.core.$ZodLooseShape>(marks: T) =>
  object(marks, "must be an object of pass marks; {} asks for none");

const tries = z.optional(whole(0, 200));
const meanTime_s = z.optional(seconds);

const dialingStation = object(
  {
    kind: z.literal("dialing"),
    ...anyStation,
    combinations: combinationPolicy,
    upTo: z.optional(whole(1, 6)),
    passMarks: passMarks({
      firstTime: tries,
      claim: z.optional(object({ rate: share, confidence: share }, 'must be such as {"rate":0.9,"confidence":0.9}')),
      stopErrorBias: z.optional(graduations),
      stopErrorSpread: z.optional(graduations),
      faultyTries: tries,
      meanTime_s,
    }),
  },
  "must be a station",
);

const zeroingStation = object(
  {
    kind: z.literal("zeroing"),
    ...anyStation,
    tolerance: z.optional(within(0.05, 5, "graduations")),
    readings: z.optional(whole(2, 20)),
    passMarks: passMarks({ zeroed: tries, refused: tries, meanTime_s }),
  },
  "must be a station",
);

const changeStation = object(
  {
    kind: z.literal("change"),
    ...jobStation,
    combinations: combinationPolicy,
    passMarks: passMarks({ right: tries, faultyTries: tries, meanTime_s }),
  },
  "must be a station",
);

const CONDITION_ID = 'must be the id of a defect in small letters, such as "index-slipped"';

const troubleStation = object(
  {
    kind: z.literal("trouble"),
    ...jobStation,
    pool: z.optional(
      list(z.string({ error: CONDITION_ID }).check(z.regex(/^[a-z0-9-]{1,60}$/, { error: CONDITION_ID })), 1, 40),
    ),
    passMarks: passMarks({ right: tries, sizeError: z.optional(graduations), meanTime_s }),
  },
  "must be a station",
);

const handoverStation = object(
  {
    kind: z.literal("handover"),
    ...jobStation,
    hand: z.enum(["real", "simulated"], { error: 'must be "real" or "simulated"' }),
    passMarks: passMarks({ clean: tries, faultyTries: tries, meanTime_s }),
  },
  "must be a station",
);

const topicShare = object(
  { topic: z.enum(TOPICS, { error: `must be one of ${TOPICS.join(", ")}` }), count: whole(1, 50) },
  'must be such as {"topic":"zeroing","count":3}',
);

const sittingRules = object(
  {
    pauseAllowed: flag,
    onReload: z.enum(["resume", "broken-off"], { error: 'must be "resume" or "broken-off"' }),
    clockHideable: flag,
    timeLimit_s: z.optional(seconds),
    questions: z.optional(
      object({ topics: list(topicShare, 1, TOPICS.length), passMark: whole(0, 350) }, "must be an object"),
    ),
  },
  "must be an object of sitting rules",
);

/** Schema of a drill sheet: what single fields may hold. `parseSheet` also checks that they fit each other. */
export const sheetSchema = object(
  {
    format: z.literal("gatefall-sheet", { error: 'must be "gatefall-sheet"' }),
    version: z.literal(1, { error: "must be 1, the only version there is" }),
    title: text(120),
    purpose: text(600),
    instructions: z.optional(list(text(400), 0, 20)),
    cautions: z.optional(list(text(400), 0, 20)),
    stations: list(
      z.discriminatedUnion("kind", [dialingStation, zeroingStation, changeStation, troubleStation, handoverStation], {
        error: `must have a kind that this trainer knows (${STATION_KINDS.join(", ")}); a newer one may know more`,
      }),
      1,
      40,
    ),
    order: z.enum(["blocked", "interleaved", "random"], { error: 'must be "blocked", "interleaved" or "random"' }),
    seed: z.optional(whole(0, 2 ** 32 - 1)),
    sitting: z.optional(sittingRules),
    source: z.optional(text(400)),
  },
  "must be an object, a drill sheet",
);

/** The JSON Schema of a sheet as it is published in `shared/sheet.schema.json`. */
export function sheetJsonSchema(): object {
  const schema = z.toJSONSchema(sheetSchema, { io: "input" });
  return { ...schema, title: "Gatefall drill sheet, version 1" };
}
