import * as z from "zod/mini";
import type { Path, Problem } from "../wording/problem";
import { opposite } from "./dial";
import { fieldProblem } from "./fieldProblem";
import { above, filled, flag, list, must, number, oneOf, rulesOf, turn, whole, within } from "./fieldSchemas";
import { fittingMisfit, fittingSchema } from "./fittingSchema";
import { LockError } from "./lockError";
import { LOCK_WORDS, lockProblem } from "./lockWords";
import type { Profile, Step } from "./profile";
import { zeroingMisfit, zeroingSchema } from "./zeroingSchema";

const MAX_GRADUATIONS = 200;
const onDial = within(0, MAX_GRADUATIONS, "graduations");
const lockRule = rulesOf(LOCK_WORDS);

const step = z.object(
  { turn, arrivals: whole(1, 12), rule: oneOf(["at-least", "exactly"]) },
  must("such-as", { example: { turn: "left", arrivals: 4, rule: "at-least" } }),
);

/** No dial has more graduations, and no list of a profile more entries. */
const notMore = z.maxLength(MAX_GRADUATIONS, must("short-list", { most: MAX_GRADUATIONS }));

const pairRule = lockRule("pair", { example: [0, 20] });
const range = z.tuple([number, number], pairRule).check(z.refine(([low, high]) => low <= high, pairRule));

/** Schema of the rules for choosing a combination. */
export const combinationRulesSchema = z.object(
  {
    minSeparation: z.optional(onDial),
    circular: z.optional(flag),
    excludedLast: z.optional(z.array(range, must("such-as", { example: [[0, 20]] })).check(notMore)),
    noStraight: z.optional(flag),
    notAllEven: z.optional(flag),
    notAllOdd: z.optional(flag),
    multiplesOfTen: z.optional(oneOf(["numbers", "differences"])),
    oneFromEachThird: z.optional(flag),
    excluded: z.optional(
      z
        .array(
          z.union([z.number(), range], lockRule("number-or-pair", { example: [0, 20] })),
          must("such-as", { example: [13, [40, 49]] }),
        )
        .check(notMore),
    ),
  },
  must("object"),
);

const common = {
  id: filled,
  title: z.optional(filled),
  short: z.optional(filled),
  graduations: z._default(whole(10, MAX_GRADUATIONS), 100),
  numbersIncrease: z._default(turn, "left"),
  procedure: list(step, 2, 6),
  draw: z.object(
    {
      turn,
      engageAt: z._default(onDial, 0),
      travel: above(0, "graduations"),
      positiveStop: z._default(flag, false),
    },
    must("such-as", { example: { turn: "right", engageAt: 5, travel: 15 } }),
  ),
  stopTolerance: z._default(within(0, 5, "graduations"), 1),
  turnback: z._default(within(0, 5, "graduations"), 1),
  combinationRules: z._default(combinationRulesSchema, {}),
  asSet: z.optional(z.array(number, must("any-list")).check(notMore)),
  fitting: z.optional(fittingSchema),
};

const eachWheel = z.array(onDial, must("any-list")).check(notMore);

const wheelPackProfile = z.object({
  kind: z.literal("wheel-pack"),
  ...common,
  wheelPack: z.object(
    { freePlay: eachWheel, gateTolerance: eachWheel },
    must("such-as", { example: { freePlay: [100], gateTolerance: [1] } }),
  ),
  changing: z.optional(
    z.object(
      {
        index: within(-MAX_GRADUATIONS / 2, MAX_GRADUATIONS / 2, "graduations"),
        keyTolerance: above(0, "graduations"),
      },
      must("such-as", { example: { index: 10, keyTolerance: 1.5 } }),
    ),
  ),
});

const dialEncoderProfile = z.object({
  kind: z.literal("dial-encoder"),
  ...common,
  pauseLimit_s: z.optional(above(0, "seconds")),
  wrongTry: z.optional(
    z.object(
      { tries: whole(1, 100), wait_s: above(0, "seconds") },
      must("such-as", { example: { tries: 3, wait_s: 60 } }),
    ),
  ),
  zeroing: z.optional(zeroingSchema),
});

/** Schema of a lock profile: what single fields may hold. `parseProfile` also checks that they fit each other. */
export const profileSchema = z.discriminatedUnion(
  "kind",
  [wheelPackProfile, dialEncoderProfile],
  must("one-of", { choices: ["wheel-pack", "dial-encoder"] }),
);

type Misfit = Problem | undefined;

const alternates = (procedure: readonly Step[]): Misfit => {
  const index = procedure.findIndex((one, k) => k > 0 && one.turn === procedure[k - 1]?.turn);
  return index < 0 ? undefined : lockProblem("same-turn", ["procedure", index, "turn"]);
};

const listFits = (path: Path, entries: readonly number[] | undefined, wanted: number): Misfit =>
  entries === undefined || entries.length === wanted
    ? undefined
    : lockProblem("entry-count", path, { wanted, count: entries.length });

const playFits = (freePlay: readonly number[], graduations: number): Misfit => {
  const index = freePlay.findIndex((play) => play > graduations);
  return index < 0
    ? undefined
    : lockProblem("above-turn", ["wheelPack", "freePlay", index], { graduations, found: freePlay[index] });
};

const numbersFit = (numbers: readonly number[] = [], graduations: number): Misfit => {
  const index = numbers.findIndex((one) => one < 0 || one >= graduations);
  return index < 0 ? undefined : lockProblem("off-face", ["asSet", index], { graduations, found: numbers[index] });
};

const indexFits = (index = 0, graduations: number): Misfit =>
  Math.abs(index) <= graduations / 2
    ? undefined
    : lockProblem("above-half-turn", ["changing", "index"], { most: graduations / 2, found: index });

const encoderCounts = (procedure: readonly Step[]): Misfit => {
  const index = procedure.findIndex((one) => one.rule !== "at-least");
  return index < 0 ? undefined : lockProblem("encoder-counts", ["procedure", index, "rule"]);
};

const drawShows = (travel: number, turnback: number): Misfit =>
  travel > turnback ? undefined : lockProblem("draw-is-no-run", ["draw", "travel"], { turnback, found: travel });

const ofItsKind = (profile: z.infer<typeof profileSchema>): Misfit[] => {
  const { procedure, graduations } = profile;
  if (profile.kind === "dial-encoder") {
    const { draw: last, turnback, zeroing } = profile;
    return [encoderCounts(procedure), drawShows(last.travel, turnback), zeroingMisfit(zeroing, graduations)];
  }
  const { freePlay, gateTolerance } = profile.wheelPack;
  return [
    indexFits(profile.changing?.index, graduations),
    listFits(["wheelPack", "freePlay"], freePlay, procedure.length),
    listFits(["wheelPack", "gateTolerance"], gateTolerance, procedure.length),
    playFits(freePlay, graduations),
  ];
};

const drawFits = ({ engageAt, travel }: Profile["draw"], graduations: number): Misfit => {
  if (engageAt >= graduations) return lockProblem("off-face", ["draw", "engageAt"], { graduations, found: engageAt });
  return travel > graduations
    ? lockProblem("above-turn", ["draw", "travel"], { graduations, found: travel })
    : undefined;
};

/** What no single field shows: fields that must fit each other. */
const misfit = (profile: z.infer<typeof profileSchema>): Misfit => {
  const { draw, graduations, procedure } = profile;
  const problems = [
    alternates(procedure),
    drawFits(draw, graduations),
    listFits(["asSet"], profile.asSet, procedure.length),
    numbersFit(profile.asSet, graduations),
    fittingMisfit(profile.fitting),
    ...ofItsKind(profile),
  ];
  return problems.find((problem) => problem !== undefined);
};

/**
 * Reads a lock profile from outside.
 *
 * @param value - parsed JSON; keys it does not know are passed over
 * @returns the profile with every default filled in
 * @throws {LockError} naming the field
 */
export function parseProfile(value: unknown): Profile {
  const parsed = profileSchema.safeParse(value);
  if (!parsed.success) throw new LockError(fieldProblem(parsed.error.issues, value), "profile");
  const { data } = parsed;
  const problem = misfit(data);
  if (problem !== undefined) throw new LockError(problem, "profile");
  const isHeld = data.kind === "wheel-pack" || data.draw.positiveStop;
  return { ...data, title: data.title ?? data.id, draw: { ...data.draw, positiveStop: isHeld } };
}

/** What is allowed in a profile but hardly meant; none for a sound profile. */
export function profileDoubts({ procedure, draw }: Profile): Problem[] {
  const drawsOn = procedure.at(-1)?.turn === draw.turn;
  return drawsOn ? [lockProblem("draws-on", ["draw", "turn"], { usual: opposite(draw.turn) })] : [];
}
