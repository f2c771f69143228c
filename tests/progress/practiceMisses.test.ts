import { expect, test } from "vitest";
import { missesSheet } from "../../src/progress/practiceMisses";
import { type SittingFacts, sittingRecord } from "../../src/records/sitting/sittingRecord";
import { dialingStation, testSheet, zeroingStation } from "../support/testSheet";
import { dialingTry, zeroingTry } from "../support/testTries";

const record = (facts: Partial<SittingFacts>) =>
  sittingRecord({
    sheet: testSheet({
      title: "Friday",
      stations: [
        dialingStation({ repetitions: 3, passMarks: { firstTime: 3 }, timeLimit_s: 60 }),
        zeroingStation({ title: "Zero" }),
      ],
    }),
    seed: 1,
    appVersion: "1",
    startedAt: "2026-11-27T08:00:00.000Z",
    worked_ms: 1,
    pauses: 0,
    interruptions: 0,
    tries: [],
    answers: [],
    ended: "finished",
    ...facts,
  });

test("the missed combinations come again at their station, and nothing that was right", async () => {
  const tries = [
    dialingTry({ combination: [10, 20, 30] }),
    dialingTry({ repetition: 2, combination: [11, 21, 31], opened: false }),
    dialingTry({ repetition: 3, combination: [12, 22, 32], time_ms: 61_000 }),
    zeroingTry({ station: 1 }),
  ];
  const answers = [
    { questionId: "zeroing-01", choice: 0, isRight: false },
    { questionId: "proving-02", choice: 0, isRight: true },
  ];
  const sheet = missesSheet(await record({ tries, answers }));
  expect(sheet).toMatchObject({
    title: "Misses of Friday",
    stations: [
      {
        kind: "dialing",
        title: "Station 1",
        repetitions: 2,
        combinations: {
          policy: "fixed",
          list: [
            [11, 21, 31],
            [12, 22, 32],
          ],
        },
        passMarks: {},
      },
    ],
    sitting: { questions: { topics: [{ topic: "zeroing", count: 1 }], passMark: 1 } },
  });
  expect(sheet?.stations).toHaveLength(1);
});

test("where every try was right there is nothing to practice", async () => {
  expect(missesSheet(await record({ tries: [dialingTry(), zeroingTry({ station: 1 })] }))).toBeNull();
});
