import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { Bench } from "tinybench";
import { WheelPack } from "../../src/lock/wheelPack";
import { farthestStep, playOfPins, RigidPack } from "../lock/rigidBody";
import { packProfile } from "../lock/testPacks";

// Pins so wide that the engine needs no more than one step for the longest move of the hand: the kindest case for it.
const PIN_RADIUS = 1.3;
/** Pins three graduations wide, as in the fixed-pin profile. */
const USUAL_PIN_RADIUS = 0.47;
const PER_TURN = 100;
const MOVES = 20_000;
const ENGINE_MOVES = 200;
/** What the engine takes when it is not told otherwise; the reference test asks for more. */
const USUAL_ITERATIONS = [8, 3] as const;

/**
 * A hand on the dial: steps of 0.2 to 4 graduations.
 *
 * @param run - least and most moves before the hand changes direction
 */
function handMotion(moves: number, runTurns: readonly [number, number] | "every move"): Float64Array {
  const random = xoroshiro128plus(1989);
  const hand = new Float64Array(moves + 1);
  let [sign, left] = [1, 0];
  for (let i = 1; i <= moves; i++) {
    if (left <= 0) {
      sign = -sign;
      left = runTurns === "every move" ? 0 : uniformInt(random, ...runTurns) * PER_TURN;
    }
    const step = 0.2 + 3.8 * uniformFloat64(random);
    hand[i] = (hand[i - 1] as number) + sign * step;
    left -= step;
  }
  return hand;
}

const play = playOfPins(PIN_RADIUS, PER_TURN);
const profile = packProfile({ perTurn: PER_TURN, freePlay: [play, play, play] });
const newPack = () => new WheelPack(profile, [38, 71, 26]);
const hand = handMotion(MOVES, [1, 4]);
const tremblingHand = handMotion(MOVES, "every move");
const bigMoves = Float64Array.from(handMotion(MOVES, [1, 4]), (position) => 20 * position);
const packs = { through: newPack(), trembling: newPack(), big: newPack(), oneByOne: newPack(), turn: newPack() };
const engine = new RigidPack({ perTurn: PER_TURN, pinRadii: [PIN_RADIUS, PIN_RADIUS, PIN_RADIUS] });

const followers = new Float64Array(3);
const dial = new Float64Array(1);

/** The floats a move touches and no mechanics: a position and three followers read, three followers and a dial written. */
function bareLoop(): void {
  for (let i = 1; i < hand.length; i++) {
    const position = hand[i] as number;
    const one = followers[0] as number;
    const two = followers[1] as number;
    const three = followers[2] as number;
    followers[0] = two;
    followers[1] = three;
    followers[2] = one + position;
    dial[0] = position;
  }
}

function oneByOne(): void {
  for (let i = 1; i < hand.length; i++) packs.oneByOne.turnBy((hand[i] as number) - (hand[i - 1] as number));
}

function engineMoves(): void {
  for (let i = 1; i <= ENGINE_MOVES; i++)
    engine.step((hand[i] as number) - (hand[i - 1] as number), ...USUAL_ITERATIONS);
}

let way = 1;
/** A whole turn, left and right by turns, in the fewest steps that these pins allow. */
function engineTurns(pinRadius: number) {
  const turning = new RigidPack({ perTurn: PER_TURN, pinRadii: [pinRadius, pinRadius, pinRadius] });
  const steps = Math.ceil(PER_TURN / farthestStep(pinRadius, PER_TURN));
  const run = () => {
    for (let step = 0; step < steps; step++) turning.step((way * PER_TURN) / steps, ...USUAL_ITERATIONS);
    way = -way;
  };
  const name = `rigid-body engine, a whole turn in ${steps} steps (play ${playOfPins(pinRadius, PER_TURN).toFixed(0)})`;
  return { name, moves: 1, run };
}
function packTurns(): void {
  for (let i = 0; i < MOVES; i++) {
    packs.turn.turnBy(way * PER_TURN);
    way = -way;
  }
}

const cases: { name: string; moves: number; run: () => void }[] = [
  { name: "bare loop over the same floats", moves: MOVES, run: bareLoop },
  { name: "pack, turnThrough", moves: MOVES, run: () => packs.through.turnThrough(hand) },
  {
    name: "pack, turnThrough, back and forth at every move",
    moves: MOVES,
    run: () => packs.trembling.turnThrough(tremblingHand),
  },
  { name: "pack, turnThrough, moves of 4 to 80", moves: MOVES, run: () => packs.big.turnThrough(bigMoves) },
  { name: "pack, turnBy one by one", moves: MOVES, run: oneByOne },
  { name: "rigid-body engine, one step a move", moves: ENGINE_MOVES, run: engineMoves },
  { name: "pack, a whole turn in one turnBy", moves: MOVES, run: packTurns },
  engineTurns(PIN_RADIUS),
  engineTurns(USUAL_PIN_RADIUS),
];

const bench = new Bench({ time: 700, warmupTime: 200 });
for (const { name, run } of cases) bench.add(name, run);
await bench.run();

const nanoseconds = new Map<string, number>();
for (const { name, moves } of cases) {
  const result = bench.getTask(name)?.result;
  if (result?.state !== "completed") throw new Error(`${name} did not complete`);
  nanoseconds.set(name, (result.latency.p50 * 1e6) / moves);
}

const of = (index: number) => nanoseconds.get(cases[index]?.name ?? "") ?? Number.NaN;
const [bare, through, engineStep, wholeTurn] = [of(0), of(1), of(5), of(6)];
const rows = cases.map(({ name }, index) => {
  const ns = of(index);
  const perSecond = Math.round(1e9 / ns).toLocaleString("en-US");
  return `| ${name} | ${ns.toFixed(2)} | ${perSecond} | ${(ns / bare).toFixed(2)} |`;
});
process.stdout.write(
  `${[
    `Three wheels, free play ${play.toFixed(2)} of ${PER_TURN}; medians of one run.`,
    "",
    "| what | ns per move | moves per second | times the bare loop |",
    "|---|---:|---:|---:|",
    ...rows,
    "",
    `A move: the engine takes ${Math.round(engineStep / through)} times as long as turnThrough,`,
    `and ${Math.round(engineStep / of(4))} times as long as turnBy.`,
    `A whole turn: the engine takes ${Math.round(of(7) / wholeTurn)} and ${Math.round(of(8) / wholeTurn)} times as long.`,
  ].join("\n")}\n`,
);
