import { beforeEach, describe, expect, test } from "vitest";
import { ZeroingSession } from "../../../../src/app/exercises/zeroing/session/zeroingSession";
import { ZeroingNotes } from "../../../../src/app/exercises/zeroing/zeroingNotes";
import type { Turn } from "../../../../src/lock/dial";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import type { ZeroingNote } from "../../../../src/records/zeroing/zeroingNote";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { profileCreep } from "../../../../src/zeroing/ringClamp";
import { profileRules } from "../../../../src/zeroing/zeroingRules";
import { profileRanges } from "../../../../src/zeroing/zeroLock";
import { NOON } from "../../../support/logbookRecords";

const profile = shippedProfile("dial-encoder");
if (profile.kind !== "dial-encoder") throw new Error("the lock to be zeroed is none that can be");
const setup = {
  graduations: profile.graduations,
  rules: profileRules(profile),
  ranges: profileRanges(profile),
  creep: profileCreep(profile),
};

let session: ZeroingSession;
let kept: ZeroingNote[];
let clock: number;

beforeEach(() => {
  session = new ZeroingSession(setup, seededChance(3));
  kept = [];
  clock = 0;
  let count = 0;
  const notes = new ZeroingNotes("dial-encoder", () => `id${count++}`);
  session.subscribe(() => {
    const note = notes.look(session, NOON + clock);
    if (note !== null) kept.push(note);
  });
});

/** Turns once round onto zero, rests and reads. */
function readFrom(side: Turn): void {
  const sign = side === "left" ? 1 : -1;
  const toZero = -session.lock.seenDeviation;
  const back = toZero * sign <= 60 ? toZero + sign * setup.graduations : toZero;
  for (const part of [0.5, 0.5]) {
    clock += 500;
    session.turnBy(back * part, clock);
  }
  clock += 2000;
  session.takeReading(clock);
}

function setZero(): void {
  session.clampRing();
  for (let i = 0; i < 12 && session.asked !== null; i++) readFrom(session.asked);
}

describe("a zeroing", () => {
  test("is kept once it is set, with every reading in order", () => {
    setZero();
    expect(session.state).toBe("zeroSet");
    const note = kept.at(-1);
    expect(note?.outcome).toBe("zero-set");
    expect(note?.readings.map(({ turn }) => turn)).toEqual(
      setup.rules.order.flatMap((side) => Array.from({ length: setup.rules.wanted }, () => side)),
    );
    if (note !== undefined)
      expect(() => checkWrite({ kind: "zeroings", record: { ...note, personId: "p" } })).not.toThrow();
  });

  test("keeps its refused readings with their reason", () => {
    session.clampRing();
    clock += 5000;
    session.turnBy(-3, clock);
    session.takeReading(clock + 3000);
    setZero();
    expect(kept.at(-1)?.readings[0]?.refusal).toBeDefined();
  });

  test("is kept as broken off with every reading, until it has ended", () => {
    session.clampRing();
    for (let i = 1; i <= 2; i++) {
      readFrom(setup.rules.order[0]);
      expect(kept.at(-1)).toMatchObject({ id: "id0", outcome: "broken-off" });
      expect(kept.at(-1)?.readings).toHaveLength(i);
    }
    setZero();
    expect(new Set(kept.map(({ id }) => id))).toEqual(new Set(["id0"]));
    expect(kept.map(({ outcome }) => outcome).indexOf("zero-set")).toBe(kept.length - 1);
  });

  test("keeps its record when a reading is added, and another zeroing has its own", () => {
    setZero();
    const [first] = setup.rules.order;
    session.reopen(first);
    readFrom(first);
    const ended = () => kept.filter(({ outcome }) => outcome === "zero-set");
    expect(ended().map(({ id }) => id)).toEqual(["id0", "id0"]);
    expect(ended()[1]?.readings).toHaveLength((ended()[0]?.readings.length ?? 0) + 1);
    session.newLock();
    setZero();
    expect(ended().map(({ id }) => id)).toEqual(["id0", "id0", "id1"]);
  });
});
