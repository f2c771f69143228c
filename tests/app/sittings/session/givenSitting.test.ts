import { expect, test } from "vitest";
import { newProgress } from "../../../../src/app/sittings/session/sittingProgress";
import { SittingSession } from "../../../../src/app/sittings/session/sittingSession";
import { memoryShelf } from "../../../support/memoryShelf";
import { VERSION } from "../../../support/satRecord";
import { dialingStation, testSheet } from "../../../support/testSheet";

const SHEET = testSheet({
  stations: [dialingStation({ repetitions: 2 })],
  sitting: { pauseAllowed: false, onReload: "resume", clockHideable: false },
});

const GIVEN = {
  id: "one",
  sheet: SHEET,
  seed: 5,
  seedFrom: "server",
  assignmentId: "an-assignment",
  extraTime_percent: 25,
  person: "Tavro",
  personId: "tavro",
} as const;

test("a sitting that a class server gave is nobody else's, and stays so over a reload", () => {
  const shelf = memoryShelf();
  const before = new SittingSession(newProgress(GIVEN), shelf);
  before.sitAs({ name: "Hill", id: "hill" });
  before.readInstructions();
  before.start(1000);
  const kept = shelf.progress;
  if (kept === null) throw new Error("nothing is kept");
  const after = new SittingSession(kept, shelf);
  expect([after.assignmentId, after.person, after.seed]).toEqual(["an-assignment", "Tavro", 5]);
  after.abandon(2000);
  expect(after.facts(VERSION)).toMatchObject({ seedFrom: "server", extraTime_percent: 25, personId: "tavro" });
});

test("a sitting of this bench alone says nothing of extra time", () => {
  const session = new SittingSession(
    newProgress({ ...GIVEN, assignmentId: null, extraTime_percent: 0 }),
    memoryShelf(),
  );
  session.sitAs({ name: "Hill", id: "hill" });
  session.readInstructions();
  session.start(1000);
  session.abandon(2000);
  expect(session.facts(VERSION)).not.toHaveProperty("extraTime_percent");
  expect(session.person).toBe("Hill");
});
