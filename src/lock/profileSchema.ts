import * as z from "zod/mini";
import { opposite, type Turn } from "./dial";
import { fieldProblem } from "./fieldProblem";
import { above, turn, whole, within } from "./fieldSchemas";
import { LockError } from "./lockError";
import type { Profile, Step } from "./profile";
import { zeroingMisfit, zeroingSchema } from "./zeroingSchema";

const text = (words: string) => z.string({ error: words }).check(z.minLength(1, { error: words }));

const MAX_GRADUATIONS = 200;
const fraction = "must be a number of graduations from 0 to 200";

const step = z.object(
  {
    turn,
    arrivals: whole(1, 12, "must be a whole number from 1 to 12"),
    rule: z.enum(["at-least", "exactly"], { error: 'must be "at-least" or "exactly"' }),
  },
  { error: 'must be a step such as {"turn":"left","arrivals":4,"rule":"at-least"}' },
);

const flag = z.optional(z.boolean({ error: "must be true or false" }));
const pairWords = "must be a pair of numbers such as [0, 20], the lower first";
const range = z
  .tuple([z.number({ error: "must be a number" }), z.number({ error: "must be a number" })], { error: pairWords })
  .check(z.refine(([low, high]) => low <= high, { error: pairWords }));

/** Schema of the rules for choosing a combination. */
export const combinationRulesSchema = z.object(
  {
    minSeparation: z.optional(within(0, MAX_GRADUATIONS, fraction)),
    circular: flag,
    excludedLast: z.optional(z.array(range, { error: "must be a list of pairs such as [[0, 20], [85, 99]]" })),
    noStraight: flag,
    notAllEven: flag,
    notAllOdd: flag,
    multiplesOfTen: z.optional(
      z.enum(["numbers", "differences"], { error: 'must be "numbers" or "differences", or left out' }),
    ),
    oneFromEachThird: flag,
    excluded: z.optional(
      z.array(z.union([z.number(), range], { error: "must be a number or a pair such as [0, 20], the lower first" }), {
        error: "must be a list of numbers or pairs such as [13, [40, 49]]",
      }),
    ),
  },
  { error: "must be an object of rules" },
);

const draw = z.object(
  {
    turn,
    engageAt: z._default(within(0, MAX_GRADUATIONS, fraction), 0),
    travel: above(0, "must be a number of graduations above 0"),
    positiveStop: z._default(z.boolean({ error: "must be true or false" }), false),
  },
  { error: 'must be an object such as {"turn":"right","engageAt":5,"travel":15}' },
);

const common = {
  id: text("must be a name"),
  title: z.optional(text("must be a title")),
  graduations: z._default(whole(10, MAX_GRADUATIONS, "must be a whole number from 10 to 200"), 100),
  numbersIncrease: z._default(turn, "left"),
  procedure: z
    .array(step, { error: "must be a list of 2 to 6 steps" })
    .check(
      z.minLength(2, { error: "must be a list of 2 to 6 steps" }),
      z.maxLength(6, { error: "must be a list of 2 to 6 steps" }),
    ),
  draw,
  stopTolerance: z._default(within(0, 5, "must be a number of graduations from 0 to 5"), 1),
  turnback: z._default(within(0, 5, "must be a number of graduations from 0 to 5"), 1),
  combinationRules: z._default(combinationRulesSchema, {}),
  asSet: z.optional(z.array(z.number({ error: "must be a number" }), { error: "must be a list of numbers" })),
};

const plays = (words: string) => z.array(within(0, MAX_GRADUATIONS, fraction), { error: words });

const wheelPackProfile = z.object({
  kind: z.literal("wheel-pack"),
  ...common,
  wheelPack: z.object(
    {
      freePlay: plays("must be a list with the play of each wheel"),
      gateTolerance: plays("must be a list with the tolerance of each gate"),
    },
    { error: 'must be an object such as {"freePlay":[100,100,100],"gateTolerance":[1.25,1.25,1.25]}' },
  ),
  changing: z.optional(
    z.object(
      {
        index: within(-MAX_GRADUATIONS / 2, MAX_GRADUATIONS / 2, "must be a number of graduations from -100 to 100"),
        keyTolerance: above(0, "must be a number of graduations above 0"),
      },
      { error: 'must be an object such as {"index":10,"keyTolerance":1.5}' },
    ),
  ),
});

const dialEncoderProfile = z.object({
  kind: z.literal("dial-encoder"),
  ...common,
  pauseLimit_s: z.optional(above(0, "must be a number of seconds above 0")),
  wrongTry: z.optional(
    z.object(
      {
        tries: whole(1, 100, "must be a whole number from 1 to 100"),
        wait_s: above(0, "must be a number of seconds above 0"),
      },
      { error: 'must be an object such as {"tries":3,"wait_s":60}' },
    ),
  ),
  zeroing: z.optional(zeroingSchema),
});

/** Schema of a lock profile: what single fields may hold. `parseProfile` also checks that they fit each other. */
export const profileSchema = z.discriminatedUnion("kind", [wheelPackProfile, dialEncoderProfile], {
  error: 'must be "wheel-pack" or "dial-encoder"',
});

type Problem = string | undefined;

const alternates = (procedure: readonly Step[]): Problem => {
  const index = procedure.findIndex((one, k) => k > 0 && one.turn === procedure[k - 1]?.turn);
  return index < 0 ? undefined : `procedure[${index}].turn must be the other way than the step before it`;
};

const listFits = (name: string, list: readonly number[] | undefined, wheels: number): Problem =>
  list === undefined || list.length === wheels
    ? undefined
    : `${name} must have ${wheels} entries, one for each step of the procedure, not ${list.length}`;

const playFits = (freePlay: readonly number[], graduations: number): Problem => {
  const index = freePlay.findIndex((play) => play > graduations);
  return index < 0
    ? undefined
    : `wheelPack.freePlay[${index}] must be at most one turn (${graduations} graduations), not ${freePlay[index]}`;
};

const numbersFit = (numbers: readonly number[] | undefined, graduations: number): Problem => {
  const index = (numbers ?? []).findIndex((number) => number < 0 || number >= graduations);
  return index < 0
    ? undefined
    : `asSet[${index}] must be a number from 0 to below ${graduations}, not ${numbers?.[index]}`;
};

const indexFits = (index: number | undefined, graduations: number): Problem =>
  index === undefined || Math.abs(index) <= graduations / 2
    ? undefined
    : `changing.index must be at most half a turn (${graduations / 2} graduations) either way, not ${index}`;

const encoderCounts = (procedure: readonly Step[]): Problem => {
  const index = procedure.findIndex((one) => one.rule !== "at-least");
  return index < 0 ? undefined : `procedure[${index}].rule must be "at-least" in a dial-encoder lock`;
};

const drawShows = (travel: number, turnback: number): Problem =>
  travel > turnback
    ? undefined
    : `draw.travel must be more than turnback (${turnback}), or the draw is no run, not ${travel}`;

const ofItsKind = (profile: z.infer<typeof profileSchema>): Problem[] => {
  const { procedure, graduations } = profile;
  if (profile.kind === "dial-encoder") {
    const { draw: last, turnback, zeroing } = profile;
    return [encoderCounts(procedure), drawShows(last.travel, turnback), zeroingMisfit(zeroing, graduations)];
  }
  const { freePlay, gateTolerance } = profile.wheelPack;
  return [
    indexFits(profile.changing?.index, graduations),
    listFits("wheelPack.freePlay", freePlay, procedure.length),
    listFits("wheelPack.gateTolerance", gateTolerance, procedure.length),
    playFits(freePlay, graduations),
  ];
};

/** What no single field shows: fields that must fit each other. */
const misfit = (profile: z.infer<typeof profileSchema>): Problem => {
  const { draw: last, graduations, procedure } = profile;
  const problems = [
    alternates(procedure),
    last.engageAt >= graduations ? `draw.engageAt must be below ${graduations}, not ${last.engageAt}` : undefined,
    last.travel > graduations ? `draw.travel must be at most one turn (${graduations}), not ${last.travel}` : undefined,
    listFits("asSet", profile.asSet, procedure.length),
    numbersFit(profile.asSet, graduations),
    ...ofItsKind(profile),
  ];
  return problems.find((problem) => problem !== undefined);
};

/**
 * Reads a lock profile from outside.
 *
 * @param value - parsed JSON; keys it does not know are passed over
 * @returns the profile with every default filled in
 * @throws {LockError} `bad-profile` with a sentence that names the field
 */
export function parseProfile(value: unknown): Profile {
  const parsed = profileSchema.safeParse(value);
  if (!parsed.success) throw new LockError("bad-profile", `profile: ${fieldProblem(parsed.error.issues, value)}`);
  const problem = misfit(parsed.data);
  if (problem !== undefined) throw new LockError("bad-profile", `profile: ${problem}`);
  const { data } = parsed;
  const isHeld = data.kind === "wheel-pack" || data.draw.positiveStop;
  return { ...data, title: data.title ?? data.id, draw: { ...data.draw, positiveStop: isHeld } };
}

/**
 * What is allowed in a profile but hardly meant.
 *
 * @returns sentences; none for a sound profile
 */
export function profileDoubts(profile: Profile): string[] {
  const lastTurn: Turn | undefined = profile.procedure.at(-1)?.turn;
  const drawsOn = lastTurn === profile.draw.turn;
  return drawsOn
    ? [
        `draw.turn goes on in the direction of the last number, so the draw spoils the last number; ${opposite(profile.draw.turn)} to the last number is usual`,
      ]
    : [];
}
