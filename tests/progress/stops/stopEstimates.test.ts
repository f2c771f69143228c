import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { estimateFigure } from "../../../src/app/results/figures/estimateFigure";
import { estimateCalibration, judgedStops } from "../../../src/progress/stops/stopEstimates";
import { worstStop } from "../../../src/progress/stops/worstStop";
import { attemptsCsv } from "../../../src/records/csv/attemptsCsv";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { NO_CONTENTS } from "../../../src/records/logbookContents";
import { anAttempt, aPerson, NOON, stopsOf } from "../../support/logbookRecords";

const judged = (...pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([said, was], i) => ({ number: i + 1, said, was }));

describe("the worst stop", () => {
  test("is the largest size, either way, among stops near their number", () => {
    expect(worstStop(stopsOf(0.4, -1.2, 0.9))).toBe(1.2);
    expect(worstStop(stopsOf(0.4, 12))).toBe(0.4);
    expect(worstStop(stopsOf(12, -7))).toBeNull();
    expect(worstStop([])).toBeNull();
  });
});

describe("estimates", () => {
  test("count where they were given and can be judged, with the number of their attempt", () => {
    const attempts = [
      anAttempt("a", { stops: stopsOf(0.5) }),
      anAttempt("b", { stops: stopsOf(-1.5, 0.25), estimate: 1 }),
      anAttempt("c", { stops: stopsOf(20), estimate: 1 }),
    ];
    expect(judgedStops(attempts)).toEqual([{ number: 2, said: 1, was: 1.5 }]);
  });

  test("worked by hand: said 1, 1, 2, 2 of 1, 2, 2, 3", () => {
    // Differences 0, -1, 0, -1: mean -0.5, sum of squares about it 1, so sd = sqrt(1/3).
    // Sxy = 1, Sxx = 1, Syy = 2: r = 1 / sqrt(2).
    const found = estimateCalibration(judged([1, 1], [1, 2], [2, 2], [2, 3]));
    expect(found?.count).toBe(4);
    expect(found?.bias).toBeCloseTo(-0.5, 12);
    expect(found?.spread).toBeCloseTo(Math.sqrt(1 / 3), 12);
    expect(found?.correlation).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test("tell nothing of a single one, and no correlation where nothing changes", () => {
    expect(estimateCalibration(judged([1, 2]))).toBeNull();
    expect(estimateCalibration(judged([1, 2], [1, 3]))?.correlation).toBeNull();
  });

  test("keep their correlation within -1 and 1, and a right guess has no bias", () => {
    const size = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(size, size), { minLength: 2, maxLength: 40 }), (pairs) => {
        expect(Math.abs(estimateCalibration(judged(...pairs))?.correlation ?? 0)).toBeLessThanOrEqual(1);
        const right = estimateCalibration(judged(...pairs.map(([was]) => [was, was] as const)));
        expect([right?.bias, right?.spread]).toEqual([0, 0]);
      }),
    );
  });
});

describe("an attempt with an estimate", () => {
  const attempts = [
    anAttempt("a", { stops: stopsOf(1), estimate: 0.5 }),
    anAttempt("b", { stops: stopsOf(-2), estimate: 1.5 }),
    anAttempt("c", { stops: stopsOf(3), estimate: 2.5 }),
  ];
  const contents = {
    ...NO_CONTENTS,
    records: { ...NO_CONTENTS.records, people: [aPerson("tavro")], attempts: [...attempts, anAttempt("old")] },
  };

  test("goes out and in, beside one that has none", () => {
    const read = readLogbookFile(writeLogbookFile(contents, NOON)).records.attempts;
    expect(read.map(({ estimate }) => estimate)).toEqual([0.5, 1.5, 2.5, undefined]);
    const [header = "", first = ""] = attemptsCsv(contents).split(/\r?\n/);
    expect(first.split(",")[header.split(",").indexOf("estimate")]).toBe("0.5");
  });

  test("is told of in progress: how much better the hand is taken for", () => {
    const { sentence, chart, table } = estimateFigure(attempts);
    expect(sentence).toBe(
      "3 estimates: you underestimate your stop error by 0.50 graduations on average. Your estimates vary by 0.00 graduations. You feel which attempts were worse.",
    );
    expect(chart).toMatchObject({
      dots: [
        { x: 1, y: 0.5 },
        { x: 2, y: 1.5 },
        { x: 3, y: 2.5 },
      ],
    });
    expect(table?.rows.at(-1)).toEqual(["3", "2.50", "3.00", "−0.50"]);
    expect(estimateFigure(attempts.slice(0, 1)).chart).toBeNull();
  });
});
