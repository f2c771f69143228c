import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Graduations, turnOf } from "../../src/lock/dial";
import { WheelPack } from "../../src/lock/wheelPack";
import { draws } from "../support/draws";
import { engineSlop, farthestStep, playOfPins, RigidPack, type RigidPackShape } from "./rigidBody";
import { arrivalAt, packProfile, stopsOf } from "./testPacks";

// The judge is a general rigid-body engine turning discs with pins. What both must agree on is where the wheels stand
// whenever the hand rests, and so which of them moved. The tolerance is the overlap that the engine allows its bodies.

const freePlayOf = ({ perTurn, pinRadii, hasFlies }: RigidPackShape) =>
  pinRadii.map((radius) => (hasFlies ? perTurn : playOfPins(radius, perTurn)));

/** Unwrapped position of every wheel, wheel 1 first. */
const positionsOf = (pack: WheelPack) =>
  pack.slack().map((_, k, slack) => slack.slice(k).reduce((sum, lead) => sum + lead, pack.dial));

const meetingsTo = ({ pinRadii, hasFlies }: RigidPackShape, wheel: number) =>
  (pinRadii.length - wheel) * (hasFlies ? 2 : 1);

interface Rest {
  readonly stands: Graduations[];
  readonly moved: boolean[];
}

/** Where the wheels stand at each rest of the hand, as either of them has it. */
function turned(shape: RigidPackShape, hand: readonly Graduations[], freePlay = freePlayOf(shape)) {
  const { perTurn, pinRadii } = shape;
  // The gates are so narrow, and set so oddly, that the nose never drops and the dial is always free.
  const profile = packProfile({ perTurn, freePlay, gateTolerance: 0 });
  const oddNumbers = pinRadii.map(() => perTurn / Math.PI);
  const pack = new WheelPack(profile, oddNumbers);
  const engine = new RigidPack(shape);
  const farthest = farthestStep(Math.min(...pinRadii), perTurn) / 3;
  const slop = pinRadii.map((_, k) => engineSlop(meetingsTo(shape, k), perTurn));
  const restOf = (stands: Graduations[], before: Graduations[]): Rest => ({
    stands,
    moved: stands.map((stand, k) => Math.abs(stand - (before[k] ?? 0)) > 2 * (slop[k] ?? 0)),
  });
  return hand.map((position) => {
    const [packBefore, engineBefore] = [positionsOf(pack), engine.wheels()];
    pack.turnBy(position - pack.dial);
    engine.turnTo(position, farthest);
    const ours = restOf(positionsOf(pack), packBefore);
    const theirs = restOf(engine.wheels(), engineBefore);
    return { ours, theirs, slop };
  });
}

const worstMiss = (rests: ReturnType<typeof turned>) =>
  Math.max(
    ...rests.flatMap(({ ours, theirs, slop }) =>
      ours.stands.map((stand, k) => Math.abs(stand - (theirs.stands[k] ?? Number.NaN)) / (slop[k] ?? 0)),
    ),
  );

function expectAgreement(shape: RigidPackShape, hand: readonly Graduations[]) {
  const rests = turned(shape, hand);
  expect(rests.map(({ ours }) => ours.moved)).toEqual(rests.map(({ theirs }) => theirs.moved));
  expect(worstMiss(rests)).toBeLessThanOrEqual(1);
  // A motion that moved every wheel, or none, would be no test.
  expect(new Set(rests.flatMap(({ theirs }) => theirs.moved))).toEqual(new Set([true, false]));
}

const three: RigidPackShape = { perTurn: 100, pinRadii: [0.5, 0.5, 0.5] };
const perfect = (shape: RigidPackShape, combination: readonly number[], firstTurn: "left" | "right" = "left") =>
  stopsOf(packProfile({ perTurn: shape.perTurn, freePlay: freePlayOf(shape), firstTurn }), combination, 0);

const [, ofTwo = 0] = perfect(three, [38, 71, 26]);
const toTwo = perfect(three, [38, 71, 26]).slice(0, 2);

const motions: { why: string; shape: RigidPackShape; hand: readonly Graduations[] }[] = [
  { why: "three wheels dialed 4-3-2", shape: three, hand: perfect(three, [38, 71, 26]) },
  { why: "three wheels dialed from the right", shape: three, hand: perfect(three, [38, 71, 26], "right") },
  { why: "a fourth arrival at the second number carries wheel 1", shape: three, hand: [...toTwo, ofTwo - 100] },
  { why: "coming back onto an overshot second number", shape: three, hand: [...toTwo, ofTwo - 4, ofTwo] },
  {
    why: "overshot by more than the play of a turn, and a whole turn back",
    shape: three,
    hand: [...toTwo, ofTwo - 130, ofTwo - 30, ofTwo],
  },
  { why: "one turn too few at the start leaves wheel 1", shape: three, hand: [-400, -200, 38, -29, 26] },
  { why: "a hand that trembles within the play", shape: three, hand: [30, 27, 33, -40, -44, -38, -97, -95, -110] },
  {
    why: "pins of three widths",
    shape: { perTurn: 100, pinRadii: [0.4, 1.5, 0.8] },
    hand: perfect({ perTurn: 100, pinRadii: [0.4, 1.5, 0.8] }, [29, 64, 47]),
  },
  { why: "two wheels", shape: { perTurn: 60, pinRadii: [0.5, 0.5] }, hand: [100, 171, 98, 12, 20, -110, -300, 45] },
  {
    why: "four wheels dialed 5-4-3-2 from the right",
    shape: { perTurn: 100, pinRadii: [0.5, 0.6, 0.5, 0.7] },
    hand: perfect({ perTurn: 100, pinRadii: [0.5, 0.6, 0.5, 0.7] }, [62, 17, 83, 41], "right"),
  },
  {
    why: "movable flies give back the whole turn: dialed 4-3-2",
    shape: { ...three, hasFlies: true },
    hand: perfect({ ...three, hasFlies: true }, [38, 71, 26]),
  },
  {
    why: "movable flies: 98.4 turned back moves nothing where pins alone would",
    shape: { ...three, hasFlies: true },
    hand: [150, 51.6, 49, 190, -160, -63, 60],
  },
];

describe("the wheel pack and a rigid-body engine agree", () => {
  test.each(motions)("$why", ({ shape, hand }) => expectAgreement(shape, hand));

  test("wherever the hand goes", () => {
    const pinRadii = fc.array(fc.double({ min: 0.4, max: 1.5, noNaN: true }), { minLength: 2, maxLength: 4 });
    const hand = fc.array(fc.integer({ min: -450, max: 450 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(pinRadii, hand, fc.boolean(), (radii, positions, hasFlies) => {
        expect(worstMiss(turned({ perTurn: 100, pinRadii: radii, hasFlies }, positions))).toBeLessThanOrEqual(1);
      }),
      { numRuns: draws(6, 30) },
    );
  });
});

describe("the judge is worth asking", () => {
  test("it sees a tenth of a graduation of play too much", () => {
    const tooMuch = freePlayOf(three).map((play) => play + 0.1);
    expect(worstMiss(turned(three, perfect(three, [38, 71, 26]), tooMuch))).toBeGreaterThan(1);
  });

  test("it leaves the dial where the hand put it", () => {
    const engine = new RigidPack(three);
    const target = arrivalAt(38, 4, turnOf(1), 0);
    engine.turnTo(target, 0.5);
    expect(engine.dial).toBeCloseTo(target, 9);
  });
});
