import { expect, test } from "vitest";
import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { numberToBeat } from "../../src/progress/numberToBeat";
import { personalBests } from "../../src/progress/personalBest";
import { chanceOnLock } from "../../src/progress/stops/chanceOnLock";
import { handsCompared } from "../../src/progress/stops/handsCompared";
import { heatStrip } from "../../src/progress/stops/heatStrip";
import { progressPoints } from "../../src/progress/stops/progressMeasure";
import { judgedStops } from "../../src/progress/stops/stopEstimates";
import { stopTable } from "../../src/progress/stops/stopTable";
import { stopThroughput } from "../../src/progress/stops/stopThroughput";
import { describeSource } from "../../src/realdial/sources/sourceDescription";
import { attemptOutcome } from "../../src/records/attemptOutcome";
import { exerciseOf } from "../../src/records/exercise";
import { replayedLogbook } from "../../src/records/file/replayedAttempts";
import { fileSentences } from "../../src/records/fileWords";
import { decodeTrace, encodeTrace } from "../../src/records/motion/traceCodec";
import { replay } from "../../src/trace/replay";
import { anAttempt, aPerson, contents, stopsOf } from "../support/logbookRecords";

const KNOB = describeSource("midi", 1.5);
const fine = Array.from({ length: 6 }, (_, k) =>
  anAttempt(`f${k}`, { estimate: 0.5, stops: stopsOf(0.1 * k, -0.2, 0.1) }),
);
const coarse = Array.from({ length: 6 }, (_, k) =>
  anAttempt(`c${k}`, { estimate: 0.5, stops: stopsOf(1.5, -1.5, 0.7), sources: [KNOB] }),
);

test("no figure of stops takes in what a coarse source stopped at", () => {
  const figures = (some: typeof fine) => [
    stopTable(some),
    heatStrip(some, 100, 10),
    chanceOnLock(some, 0.5),
    stopThroughput(some),
    judgedStops(some),
    progressPoints(some, "bias"),
    progressPoints(some, "worst-stop"),
  ];
  expect(figures([...fine, ...coarse])).toEqual(figures(fine));
  expect(stopTable(coarse)).toMatchObject({ all: null, leftOut: 0 });
});

test("openings and times of a coarse source count; its best is quickness and a streak, no stop", () => {
  expect(progressPoints(coarse, "time")).toHaveLength(6);
  expect(personalBests(coarse)[0]).toMatchObject({ hand: "midi", attempts: 6, truest: null });
  expect(personalBests(coarse)[0]?.quickest?.id).toBe("c0");
  expect(numberToBeat(coarse)).toMatchObject({ kind: "streak", value: 6 });
  const [midi, screen] = handsCompared([...fine, ...coarse]);
  expect(midi).toMatchObject({ hand: "midi", isCoarse: true, openings: { opened: 6 }, worstStopMore: null });
  expect(screen).toMatchObject({ hand: "screen", isCoarse: false });
});

test("a logbook's replay takes the first numbers by count and order too, where a coarse source turned the dial", () => {
  const profile = shippedProfile("three-wheel");
  const combination = [29, 92, 54];
  const path = idealMotion(profile, combination, 0, [1.2, 0, 0]);
  const trace = encodeTrace({ start: { dial: 0 }, positions: path, times_ms: path.map((_, k) => 500 * k) });
  const motion = decodeTrace(trace);
  const { stops } = attemptOutcome(replay({ profile, combination, ...motion }));
  const leftOut = (sources: (typeof KNOB)[] | undefined) => {
    const attempt = anAttempt("one", {
      ...{ exercise: exerciseOf(1), combination, duration_ms: motion.times_ms?.at(-1) ?? 0, stops },
      ...(sources && { sources }),
    });
    const book = { ...contents([aPerson("tavro")], [attempt]), traces: new Map([["one", trace]]) };
    return fileSentences(replayedLogbook(book).leftOut);
  };
  expect(leftOut([KNOB])).toEqual([]);
  expect(leftOut(undefined)).toEqual([expect.stringContaining("the recording does not open the lock")]);
  expect(leftOut([{ ...KNOB, isCoarse: false }])).toEqual([
    "1 attempt of tavro left out: what they say turned the dial cannot have been.",
  ]);
});
