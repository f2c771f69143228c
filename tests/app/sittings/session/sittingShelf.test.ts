import { expect, test } from "vitest";
import { newProgress } from "../../../../src/app/sittings/session/sittingProgress";
import { SittingShelf } from "../../../../src/app/sittings/session/sittingShelf";
import { motionText } from "../../../../src/records/motion/traceCodec";
import { keptRecord } from "../../../support/keptRecord";
import { memoryShelf, refusingShelf } from "../../../support/memoryShelf";
import { dialingStation, testSheet } from "../../../support/testSheet";

const MOTION = { start: { dial: 1 }, positions: [1, 2], times_ms: [0, 16] };

test("sittings of a deleted person are forgotten whole, those of others stay", async () => {
  const texts = new Map<string, string>();
  const shelf = memoryShelf(texts);
  const kept = keptRecord();
  shelf.keepRecord({ ...kept, id: "theirs" });
  shelf.keepRecord({ ...kept, id: "another's" });
  const sheet = testSheet({ stations: [dialingStation({ repetitions: 3 })] });
  const begun = newProgress({ id: "running", sheet, seed: 1, person: "Tavro", personId: "t" });
  shelf.keepProgress({ ...begun, snapshot: {} as typeof begun.snapshot });
  shelf.keepSeen(5);
  shelf.keepMotion(2, motionText(MOTION));
  expect(shelf.motion(2)).toEqual(MOTION);
  expect(shelf.packedMotion(2)).toBe(motionText(MOTION));

  shelf.forget(new Set(["somebody's"]));
  expect(shelf.progress?.id).toBe("running");
  shelf.forget(new Set(["theirs", "running"]));
  expect(shelf.records.map(({ id }) => id)).toEqual(["another's"]);
  expect([...texts.keys()]).toEqual(["gatefall.sittings"]);
});

test("where nothing is kept there is nothing to forget", () => {
  expect(() => refusingShelf().forget(new Set(["any"]))).not.toThrow();
});

test("where there is no room for all records the oldest go, and the newest is stored", async () => {
  const texts = new Map<string, string>();
  const kept = keptRecord();
  const room = 3.5 * JSON.stringify(kept).length;
  const shelf = new SittingShelf({
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => {
      if (text.length > room) throw new DOMException("full", "QuotaExceededError");
      texts.set(key, text);
    },
    removeItem: (key) => {
      texts.delete(key);
    },
  });
  for (let k = 1; k <= 6; k++) shelf.keepRecord({ ...kept, id: `sitting ${k}` });
  expect(shelf.records[0]?.id).toBe("sitting 6");
  expect(shelf.records.length).toBeGreaterThan(1);
  expect(shelf.isKeeping).toBe(true);
});
