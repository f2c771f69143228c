import { expect, test } from "vitest";
import { newProgress } from "../../../src/app/sittings/sittingProgress";
import { keptRecord } from "../../support/keptRecord";
import { memoryShelf, refusingShelf } from "../../support/memoryShelf";
import { dialingStation, testSheet } from "../../support/testSheet";

const MOTION = { start: { dial: 1 }, positions: [1, 2], times_ms: [0, 16] };

test("sittings of a deleted person are forgotten whole, those of others stay", async () => {
  const texts = new Map<string, string>();
  const shelf = memoryShelf(texts);
  const kept = await keptRecord();
  shelf.keepRecord({ ...kept, id: "theirs" });
  shelf.keepRecord({ ...kept, id: "another's" });
  const sheet = testSheet({ stations: [dialingStation({ repetitions: 3 })] });
  const begun = newProgress({ id: "running", sheet, seed: 1, person: "Tavro", personId: "t" });
  shelf.keepProgress({ ...begun, snapshot: {} as typeof begun.snapshot });
  shelf.keepSeen(5);
  shelf.keepMotion(2, MOTION);

  shelf.forget(new Set(["somebody's"]));
  expect(shelf.progress?.id).toBe("running");
  shelf.forget(new Set(["theirs", "running"]));
  expect(shelf.records.map(({ id }) => id)).toEqual(["another's"]);
  expect([...texts.keys()]).toEqual(["gatefall.sittings"]);
});

test("where nothing is kept there is nothing to forget", () => {
  expect(() => refusingShelf().forget(new Set(["any"]))).not.toThrow();
});
