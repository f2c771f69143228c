import { expect, test } from "vitest";
import { attemptRowOf } from "../../../src/app/results/attemptRows";
import {
  begunAgainWords,
  doubtedSentence,
  doubtForClient,
  doubtSentence,
  lostSightSentence,
} from "../../../src/app/results/doubtWords";
import { zeroingTable } from "../../../src/app/results/zeroingTable";
import { tryRow } from "../../../src/app/verdicts/sittingWords";
import { anAttempt } from "../../support/logbookRecords";
import { dialingStation, testSheet } from "../../support/testSheet";
import { dialingTry } from "../../support/testTries";

const ZEROING = {
  id: "two",
  createdAt: 1,
  updatedAt: 1,
  personId: "p",
  startedAt: 1,
  profileId: "dial-encoder",
  outcome: "zero-set",
  readings: [],
} as const;
const DOUBTED = { doubts: ["sight-lost", "steps-missed"] } as const;

test("what is in doubt is said beside the attempt, in the list, and of a sum", () => {
  expect(doubtSentence({})).toBeNull();
  expect(doubtSentence(DOUBTED)).toBe(
    "Turns in doubt: the camera lost sight of the dial, and steps of the encoder were missed. The turns that were counted may not be those the hand made.",
  );
  expect(doubtSentence({ ...DOUBTED, isDoubtRefused: true })).toMatch(/counts no such try as right\.$/);
  const doubted = { ...anAttempt("one"), doubts: [...DOUBTED.doubts] };
  expect(attemptRowOf({ ...doubted, opened: true }).result).toBe("Opened, turns in doubt");
  expect(attemptRowOf({ ...doubted, opened: false }).result).toBe("Did not open, turns in doubt");
  expect(zeroingTable([{ ...ZEROING, readings: [], doubts: ["gap"] }]).rows[0]?.[1]).toMatch(/, turns in doubt$/);
  expect(doubtedSentence([anAttempt("one")])).toBeNull();
  expect(doubtedSentence([doubted, anAttempt("two")])).toMatch(
    /^1 attempt is marked: .* It counts here all the same\.$/,
  );
  expect(doubtedSentence([doubted, doubted])).toMatch(/^2 attempts are marked: .* They count here all the same\.$/);
});

test("a client who gets the record of a handover reads why its turns are in doubt, and what to do", () => {
  expect(doubtForClient({})).toBeNull();
  expect(doubtForClient({ doubts: [] })).toBeNull();
  expect(doubtForClient(DOUBTED)).toBe(
    "the camera lost sight of the dial, and steps of the encoder were missed. A turn of the dial may have been counted wrong, so ask to see the proofs again.",
  );
});

test("a station says what comes of a lost hand, and the row of a try what came of it", () => {
  expect(lostSightSentence(dialingStation())).toBeNull();
  expect(lostSightSentence(dialingStation({ lostSight: "try-again" }))).toContain("at most 2 times");
  const outcome = (lostSight: "fails" | "try-again" | undefined, fields: object) =>
    tryRow(dialingTry(fields), testSheet({ stations: [dialingStation({ lostSight })] })).outcome;
  expect(outcome(undefined, DOUBTED)).toBe("opened, turns in doubt");
  expect(outcome("fails", DOUBTED)).toBe("opened, not counted, turns in doubt");
  expect(outcome("try-again", { begunAgain: 1 })).toBe("opened, begun again 1 time");
  expect(begunAgainWords()).toBe("");
});
