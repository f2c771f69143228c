import { expect, test } from "vitest";
import { newProgress } from "../../../../src/app/sittings/session/sittingProgress";
import { SittingSession } from "../../../../src/app/sittings/session/sittingSession";
import type { SittingShelf } from "../../../../src/app/sittings/session/sittingShelf";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { isRight } from "../../../../src/drill/marking/tryResult";
import type { DialingStation, SittingRules } from "../../../../src/drill/sheet/sheet";
import { describeSource } from "../../../../src/realdial/sources/sourceDescription";
import { recordHash } from "../../../../src/records/hashedRecord";
import { checkRecord } from "../../../../src/records/sitting/checkRecord";
import { sittingRecord } from "../../../../src/records/sitting/sittingRecord";
import { memoryShelf } from "../../../support/memoryShelf";
import { dialingStation, testSheet } from "../../../support/testSheet";

const ENCODER = describeSource("encoder", 0.05);
const RULES: SittingRules = { pauseAllowed: true, onReload: "resume", clockHideable: true };

/** A sitting of one try, its dial under the hand. */
function begun(fields: Partial<DialingStation>, shelf: SittingShelf = memoryShelf()) {
  const sheet = testSheet({ stations: [dialingStation({ repetitions: 1, ...fields })], sitting: RULES });
  const session = new SittingSession(newProgress({ id: "one", sheet, seed: 5, person: null, personId: null }), shelf);
  session.readInstructions();
  session.start(1000);
  return session;
}

function dialOf(session: SittingSession) {
  const one = session.inHand;
  if (one?.kind !== "dialing") throw new Error("no dial is in hand");
  return one;
}

/** The encoder turns the dial, as far as it may. */
function turn(session: SittingSession, by: number, at: number): void {
  if (session.admits(ENCODER)) session.turnBy(by, at, at);
}

function dialIt(session: SittingSession, now: number): void {
  const { attempt, dial } = dialOf(session);
  const path = idealMotion(attempt.profile, attempt.combination, dial, [], 5);
  path.slice(1).forEach((position, k) => {
    turn(session, position - (path[k] ?? 0), now + k * 1000);
  });
}

test.each([
  [undefined, true],
  ["counts", true],
  ["fails", false],
] as const)("under %s the try goes on and is marked", (lostSight, counts) => {
  const session = begun({ lostSight });
  turn(session, 20, 2000);
  const one = dialOf(session);
  expect(session.noteDoubt("sight-lost", 2500)).toBe(true);
  expect(session.inHand).toBe(one);
  dialIt(session, 3000);
  const [result] = session.results;
  expect(result).toMatchObject({ doubts: ["sight-lost"], sources: [ENCODER], opened: true });
  const [station] = session.sheet.stations;
  expect(result && station && isRight(result, station)).toBe(counts);
});

test("under try-again the try is broken off and begins anew, with the same numbers, twice at most", () => {
  const session = begun({ lostSight: "try-again" });
  // Before the first move there is nothing to lose.
  expect(session.noteDoubt("gap", 1500)).toBe(false);
  expect(dialOf(session).setup.begunAgain).toBe(0);
  const starts = new Set<number>();
  for (const times of [1, 2]) {
    starts.add(dialOf(session).dial);
    const { combination } = dialOf(session).attempt;
    turn(session, 20, 2000 * times);
    expect(session.noteDoubt("sight-lost", 2000 * times + 500)).toBe(false);
    expect(session.memory).toMatchObject({ begunAgain: times, isTryBegun: false, triesDone: 0 });
    expect(dialOf(session).attempt.combination).toEqual(combination);
  }
  starts.add(dialOf(session).dial);
  expect(starts.size).toBe(3);
  turn(session, 20, 9000);
  expect(session.noteDoubt("sight-lost", 9500)).toBe(true);
  dialIt(session, 10_000);
  expect(session.results).toMatchObject([{ begunAgain: 2, doubts: ["sight-lost"], opened: true }]);
});

test("a try that was begun again and then went well is right, and its record is sound", () => {
  const session = begun({ lostSight: "try-again" });
  turn(session, 20, 2000);
  session.noteDoubt("sight-lost", 2500);
  dialIt(session, 3000);
  const [result] = session.results;
  expect(result).toMatchObject({ begunAgain: 1, opened: true });
  expect(result).not.toHaveProperty("doubts");
  const record = sittingRecord(session.facts("1.0.0"));
  expect(checkRecord(record, recordHash(record), "1.0.0")).toMatchObject({ problems: [], replayed: 1 });
  const forged = { ...record, tries: record.tries.map((one) => ({ ...one, begunAgain: undefined })) };
  const plain = JSON.parse(JSON.stringify(forged)) as typeof record;
  expect(checkRecord(plain, recordHash(plain), "1.0.0").problems.map(({ code }) => code)).toEqual(["try-misfit"]);
});

test("a page that is loaded anew still knows that the try was begun again", () => {
  const shelf = memoryShelf();
  const session = begun({ lostSight: "try-again" }, shelf);
  turn(session, 20, 2000);
  session.noteDoubt("sight-lost", 2500);
  if (shelf.progress === null) throw new Error("nothing was kept");
  const again = new SittingSession(shelf.progress, shelf);
  again.resume(3000);
  expect(dialOf(again).setup.begunAgain).toBe(1);
  expect(dialOf(again).dial).toBe(dialOf(session).dial);
});

test("what a station does not admit turns nothing, begins nothing, and is named", () => {
  const session = begun({ turnedBy: "screen" });
  const { dial } = dialOf(session);
  turn(session, 20, 2000);
  expect(dialOf(session).dial).toBe(dial);
  expect(session.memory.isTryBegun).toBe(false);
  expect(session.refused).toEqual(ENCODER);
  expect(session.admits()).toBe(true);
  expect(session.refused).toBeNull();
  session.turnBy(1, 3000, 3000);
  session.endTry(4000);
  expect(session.results[0]).not.toHaveProperty("sources");
});
