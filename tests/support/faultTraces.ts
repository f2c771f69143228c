import type { FaultCode } from "../../src/dialing/fault";
import type { Graduations, Milliseconds } from "../../src/lock/dial";

/** A hand at a lock dialed 38-71-26 from 0, and what it did wrong. */
export interface FaultTrace {
  readonly why: string;
  readonly profile: "three-wheel" | "dial-encoder";
  readonly hand: readonly Graduations[];
  readonly times?: readonly Milliseconds[];
  readonly opens: boolean;
  /** Code, number counted from 1, size in graduations. */
  readonly faults: readonly (readonly [FaultCode, number, Graduations])[];
}

export const COMBINATION = [38, 71, 26];

/** A perfect hand stops at 338 (four times 38), 71 (three times), 226 (twice), and draws to the stop at reading 90. */
const OVERRUN_AND_BACK = [0, 340.5, 338, 338, 71, 226, 190];
const RESTED = [0, 9000, 9500, 9800, 15_000, 20_000, 23_000];
const HARDLY_RESTED = [0, 9000, 9500, 9799, 15_000, 20_000, 23_000];

type Dialed = Pick<FaultTrace, "hand" | "times" | "opens">;

const pack = (why: string, dialed: Dialed, ...faults: FaultTrace["faults"]): FaultTrace => ({
  ...{ why, profile: "three-wheel" },
  ...dialed,
  faults,
});

const encoder = (why: string, dialed: Dialed, ...faults: FaultTrace["faults"]): FaultTrace => ({
  ...pack(why, dialed, ...faults),
  profile: "dial-encoder",
});

/** At least one trace for every fault of every kind of lock. */
export const FAULT_TRACES: readonly FaultTrace[] = [
  pack("a perfect hand", { hand: [0, 338, 71, 226, 190], opens: true }),
  encoder("a perfect hand", { hand: [0, 338, 71, 226, 211], opens: true }),
  pack("stops off by just the tolerance", { hand: [0, 339, 72, 227, 190], opens: true }),
  encoder("stops off by just the tolerance", { hand: [0, 337, 70, 225, 210], opens: true }),
  pack("nothing but a turn the wrong way", { hand: [0, -300], opens: false }, ["wrong-way", 1, 300]),
  pack("left and right mixed up throughout: one fault, not five", { hand: [0, -362, -129, -274, -160], opens: false }, [
    "wrong-way",
    1,
    362,
  ]),
  encoder("a turn the wrong way", { hand: [0, -362, -129, -274, -160], opens: false }, ["wrong-way", 1, 362]),
  pack("spinning off the other way before a sound attempt is no fault", {
    hand: [0, -400, -62, -329, -174, -210],
    opens: true,
  }),
  pack(
    "three arrivals at the first number, from wheels that follow all the same",
    { hand: [0, 238, -29, 126, 90], opens: true },
    ["too-few-turns", 1, 100],
  ),
  encoder("three arrivals at the first number", { hand: [0, 238, -29, 126, 111], opens: false }, [
    "too-few-turns",
    1,
    100,
  ]),
  pack("two arrivals at the second number", { hand: [0, 338, 171, 326, 290], opens: false }, ["too-few-turns", 2, 100]),
  pack(
    "nothing after the first number",
    { hand: [0, 338], opens: false },
    ["too-few-turns", 2, 300],
    ["not-drawn", 3, 15],
  ),
  pack("a fourth arrival at the second number", { hand: [0, 338, -29, 126, 90], opens: false }, [
    "too-many-turns",
    2,
    100,
  ]),
  encoder("a fourth arrival at the second number is as good as the third", {
    hand: [0, 338, -29, 126, 111],
    opens: true,
  }),
  pack("a third arrival at the last number", { hand: [0, 338, 71, 326, 290], opens: false }, [
    "too-many-turns",
    3,
    100,
  ]),
  pack("a fifth arrival at the first number is allowed", { hand: [0, 438, 171, 326, 290], opens: true }),
  pack(
    "the first stop too soon: the arrival it missed is no second fault",
    { hand: [0, 335.5, 71, 226, 190], opens: false },
    ["stopped-short", 1, 2.5],
  ),
  encoder("the second stop too soon", { hand: [0, 338, 72.5, 226, 211], opens: false }, ["stopped-short", 2, 1.5]),
  pack("the second number overrun", { hand: [0, 338, 69, 226, 190], opens: false }, ["ran-past", 2, 2]),
  encoder("the last number overrun", { hand: [0, 338, 71, 227.25, 212.25], opens: false }, ["ran-past", 3, 1.25]),
  pack(
    "overrun by more than a stop may be and less than a gate may be",
    { hand: [0, 339.125, 71, 226, 190], opens: true },
    ["ran-past", 1, 1.125],
  ),
  pack("gone round again after an overrun: the first number lets one", {
    hand: [0, 340.5, 438, 171, 326, 290],
    opens: true,
  }),
  pack("overrun, come back and rested 300 ms", { hand: OVERRUN_AND_BACK, times: RESTED, opens: false }, [
    "came-back",
    1,
    2.5,
  ]),
  encoder("overrun, come back and rested 300 ms", { hand: OVERRUN_AND_BACK, times: RESTED, opens: false }, [
    "came-back",
    1,
    2.5,
  ]),
  pack("overrun, come back and rested 299 ms", { hand: OVERRUN_AND_BACK, times: HARDLY_RESTED, opens: false }, [
    "ran-past",
    1,
    2.5,
  ]),
  pack("overrun and come back, without times", { hand: OVERRUN_AND_BACK, opens: false }, ["ran-past", 1, 2.5]),
  pack(
    "the last number overrun, come back onto and rested on in two small moves",
    {
      hand: [0, 338, 71, 229, 226.5, 226, 226, 190],
      times: [0, 9000, 15_000, 20_000, 20_400, 20_500, 20_700, 24_000],
      opens: false,
    },
    ["came-back", 3, 3],
  ),
  pack(
    "overrun, come back, gone round again and overrun: the second time it did not come back",
    {
      hand: [0, 340.5, 338, 338, 440.5, 171, 326, 290],
      times: [0, 9000, 9500, 9900, 12_000, 18_000, 24_000, 27_000],
      opens: false,
    },
    ["ran-past", 1, 2.5],
    ["extra-turnback", 1, 2.5],
  ),
  pack("turned back ten on the way", { hand: [0, 100, 90, 338, 71, 226, 190], opens: true }, ["extra-turnback", 1, 10]),
  encoder("turned back two on the way to the second number", { hand: [0, 338, 200, 202, 71, 226, 211], opens: false }, [
    "extra-turnback",
    2,
    2,
  ]),
  pack("the draw left ten short", { hand: [0, 338, 71, 226, 200], opens: false }, ["not-drawn", 3, 10]),
  encoder("no draw at all", { hand: [0, 338, 71, 226], opens: false }, ["not-drawn", 3, 15]),
  encoder(
    "rested longer than the lock waits",
    { hand: [0, 338, 338, 71, 226, 211], times: [0, 9000, 39_001, 50_000, 60_000, 65_000], opens: false },
    ["paused-too-long", 1, 0],
  ),
  encoder("rested just as long as the lock waits", {
    hand: [0, 338, 338, 71, 226, 211],
    times: [0, 9000, 39_000, 50_000, 60_000, 65_000],
    opens: true,
  }),
  encoder(
    "rested in the draw",
    { hand: [0, 338, 71, 226, 220, 220, 211], times: [0, 9000, 12_000, 20_000, 21_000, 51_001, 52_000], opens: false },
    ["paused-too-long", 3, 0],
  ),
  pack("a wheel pack has all the time in the world", {
    hand: [0, 338, 338, 71, 226, 190],
    times: [0, 9000, 999_000, 1_010_000, 1_020_000, 1_030_000],
    opens: true,
  }),
];
