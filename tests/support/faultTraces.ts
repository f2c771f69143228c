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

/** At least one trace for every fault of every kind of lock. */
export const FAULT_TRACES: readonly FaultTrace[] = [
  { why: "a perfect hand", profile: "three-wheel", hand: [0, 338, 71, 226, 190], opens: true, faults: [] },
  { why: "a perfect hand", profile: "dial-encoder", hand: [0, 338, 71, 226, 211], opens: true, faults: [] },
  {
    why: "stops off by just the tolerance",
    profile: "three-wheel",
    hand: [0, 339, 72, 227, 190],
    opens: true,
    faults: [],
  },
  {
    why: "stops off by just the tolerance",
    profile: "dial-encoder",
    hand: [0, 337, 70, 225, 210],
    opens: true,
    faults: [],
  },
  {
    why: "nothing but a turn the wrong way",
    profile: "three-wheel",
    hand: [0, -300],
    opens: false,
    faults: [["wrong-way", 1, 300]],
  },
  {
    why: "left and right mixed up throughout: one fault, not five",
    profile: "three-wheel",
    hand: [0, -362, -129, -274, -160],
    opens: false,
    faults: [["wrong-way", 1, 362]],
  },
  {
    why: "a turn the wrong way",
    profile: "dial-encoder",
    hand: [0, -362, -129, -274, -160],
    opens: false,
    faults: [["wrong-way", 1, 362]],
  },
  {
    why: "spinning off the other way before a sound attempt is no fault",
    profile: "three-wheel",
    hand: [0, -400, -62, -329, -174, -210],
    opens: true,
    faults: [],
  },
  {
    why: "three arrivals at the first number, from wheels that follow all the same",
    profile: "three-wheel",
    hand: [0, 238, -29, 126, 90],
    opens: true,
    faults: [["too-few-turns", 1, 100]],
  },
  {
    why: "three arrivals at the first number",
    profile: "dial-encoder",
    hand: [0, 238, -29, 126, 111],
    opens: false,
    faults: [["too-few-turns", 1, 100]],
  },
  {
    why: "two arrivals at the second number",
    profile: "three-wheel",
    hand: [0, 338, 171, 326, 290],
    opens: false,
    faults: [["too-few-turns", 2, 100]],
  },
  {
    why: "nothing after the first number",
    profile: "three-wheel",
    hand: [0, 338],
    opens: false,
    faults: [
      ["too-few-turns", 2, 300],
      ["not-drawn", 3, 15],
    ],
  },
  {
    why: "a fourth arrival at the second number",
    profile: "three-wheel",
    hand: [0, 338, -29, 126, 90],
    opens: false,
    faults: [["too-many-turns", 2, 100]],
  },
  {
    why: "a fourth arrival at the second number is as good as the third",
    profile: "dial-encoder",
    hand: [0, 338, -29, 126, 111],
    opens: true,
    faults: [],
  },
  {
    why: "a third arrival at the last number",
    profile: "three-wheel",
    hand: [0, 338, 71, 326, 290],
    opens: false,
    faults: [["too-many-turns", 3, 100]],
  },
  {
    why: "a fifth arrival at the first number is allowed",
    profile: "three-wheel",
    hand: [0, 438, 171, 326, 290],
    opens: true,
    faults: [],
  },
  {
    why: "the first stop too soon: the arrival it missed is no second fault",
    profile: "three-wheel",
    hand: [0, 335.5, 71, 226, 190],
    opens: false,
    faults: [["stopped-short", 1, 2.5]],
  },
  {
    why: "the second stop too soon",
    profile: "dial-encoder",
    hand: [0, 338, 72.5, 226, 211],
    opens: false,
    faults: [["stopped-short", 2, 1.5]],
  },
  {
    why: "the second number overrun",
    profile: "three-wheel",
    hand: [0, 338, 69, 226, 190],
    opens: false,
    faults: [["ran-past", 2, 2]],
  },
  {
    why: "the last number overrun",
    profile: "dial-encoder",
    hand: [0, 338, 71, 227.25, 212.25],
    opens: false,
    faults: [["ran-past", 3, 1.25]],
  },
  {
    why: "overrun by more than a stop may be and less than a gate may be",
    profile: "three-wheel",
    hand: [0, 339.125, 71, 226, 190],
    opens: true,
    faults: [["ran-past", 1, 1.125]],
  },
  {
    why: "gone round again after an overrun: the first number lets one",
    profile: "three-wheel",
    hand: [0, 340.5, 438, 171, 326, 290],
    opens: true,
    faults: [],
  },
  {
    why: "overrun, come back and rested 300 ms",
    profile: "three-wheel",
    hand: OVERRUN_AND_BACK,
    times: RESTED,
    opens: false,
    faults: [["came-back", 1, 2.5]],
  },
  {
    why: "overrun, come back and rested 300 ms",
    profile: "dial-encoder",
    hand: OVERRUN_AND_BACK,
    times: RESTED,
    opens: false,
    faults: [["came-back", 1, 2.5]],
  },
  {
    why: "overrun, come back and rested 299 ms",
    profile: "three-wheel",
    hand: OVERRUN_AND_BACK,
    times: HARDLY_RESTED,
    opens: false,
    faults: [["ran-past", 1, 2.5]],
  },
  {
    why: "overrun and come back, without times",
    profile: "three-wheel",
    hand: OVERRUN_AND_BACK,
    opens: false,
    faults: [["ran-past", 1, 2.5]],
  },
  {
    why: "the last number overrun, come back onto and rested on in two small moves",
    profile: "three-wheel",
    hand: [0, 338, 71, 229, 226.5, 226, 226, 190],
    times: [0, 9000, 15_000, 20_000, 20_400, 20_500, 20_700, 24_000],
    opens: false,
    faults: [["came-back", 3, 3]],
  },
  {
    why: "overrun, come back, gone round again and overrun: the second time it did not come back",
    profile: "three-wheel",
    hand: [0, 340.5, 338, 338, 440.5, 171, 326, 290],
    times: [0, 9000, 9500, 9900, 12_000, 18_000, 24_000, 27_000],
    opens: false,
    faults: [
      ["ran-past", 1, 2.5],
      ["extra-turnback", 1, 2.5],
    ],
  },
  {
    why: "turned back ten on the way",
    profile: "three-wheel",
    hand: [0, 100, 90, 338, 71, 226, 190],
    opens: true,
    faults: [["extra-turnback", 1, 10]],
  },
  {
    why: "turned back two on the way to the second number",
    profile: "dial-encoder",
    hand: [0, 338, 200, 202, 71, 226, 211],
    opens: false,
    faults: [["extra-turnback", 2, 2]],
  },
  {
    why: "the draw left ten short",
    profile: "three-wheel",
    hand: [0, 338, 71, 226, 200],
    opens: false,
    faults: [["not-drawn", 3, 10]],
  },
  {
    why: "no draw at all",
    profile: "dial-encoder",
    hand: [0, 338, 71, 226],
    opens: false,
    faults: [["not-drawn", 3, 15]],
  },
  {
    why: "rested longer than the lock waits",
    profile: "dial-encoder",
    hand: [0, 338, 338, 71, 226, 211],
    times: [0, 9000, 39_001, 50_000, 60_000, 65_000],
    opens: false,
    faults: [["paused-too-long", 1, 0]],
  },
  {
    why: "rested just as long as the lock waits",
    profile: "dial-encoder",
    hand: [0, 338, 338, 71, 226, 211],
    times: [0, 9000, 39_000, 50_000, 60_000, 65_000],
    opens: true,
    faults: [],
  },
  {
    why: "rested in the draw",
    profile: "dial-encoder",
    hand: [0, 338, 71, 226, 220, 220, 211],
    times: [0, 9000, 12_000, 20_000, 21_000, 51_001, 52_000],
    opens: false,
    faults: [["paused-too-long", 3, 0]],
  },
  {
    why: "a wheel pack has all the time in the world",
    profile: "three-wheel",
    hand: [0, 338, 338, 71, 226, 190],
    times: [0, 9000, 999_000, 1_010_000, 1_020_000, 1_030_000],
    opens: true,
    faults: [],
  },
];
