import { expect, test } from "vitest";
import { newProgress, type SittingProgress } from "../../../../src/app/sittings/session/sittingProgress";
import { SittingSession } from "../../../../src/app/sittings/session/sittingSession";
import type { SittingShelf } from "../../../../src/app/sittings/session/sittingShelf";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { recordHash } from "../../../../src/records/hashedRecord";
import { sittingRecord } from "../../../../src/records/sitting/sittingRecord";
import { sittingShown } from "../../../../src/records/sitting/sittingShown";
import { memoryShelf } from "../../../support/memoryShelf";
import { VERSION } from "../../../support/satRecord";
import { dialingStation, testSheet } from "../../../support/testSheet";

/* A sitting begun under version 0.2.0, which counted pauses and reloads without a list, and ended under this one. */

const SHEET = testSheet({
  stations: [dialingStation({ repetitions: 2, passMarks: { firstTime: 2 } })],
  sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
});

function dialIt(session: SittingSession, now: number): void {
  const one = session.inHand;
  if (one?.kind !== "dialing") throw new Error("no dial is in hand");
  const path = idealMotion(one.attempt.profile, one.attempt.combination, one.dial, [], 5);
  path.slice(1).forEach((position, i) => {
    session.turnBy(position - (path[i] ?? 0), now + i * 1000, now + i * 1000);
  });
  session.takeNext();
}

/** What was kept, as version 0.2.0 kept it. */
function asBefore({ progress }: SittingShelf): SittingProgress {
  const { personId: _p, seedFrom: _s, clockJumps: _c, keeps: _k, ...kept } = JSON.parse(JSON.stringify(progress));
  const { breaks: _b, openBreak: _o, ...context } = kept.snapshot.context;
  return { ...newProgress(kept), ...kept, snapshot: { ...kept.snapshot, context } };
}

async function checked(session: SittingSession) {
  const record = JSON.parse(JSON.stringify(sittingRecord(session.facts(VERSION))));
  return sittingShown({ record, sha256: recordHash(record) }, VERSION);
}

test.each(["atStation", "paused"] as const)(
  "is sound when it goes on from %s, and its breaks keep their count",
  async (state) => {
    const shelf = memoryShelf();
    const before = new SittingSession(
      newProgress({ id: "one", sheet: SHEET, seed: 5, person: "Tavro", personId: null }),
      shelf,
    );
    before.readInstructions();
    before.start(1000);
    dialIt(before, 2000);
    before.pause(12_000);
    if (state === "atStation") before.resume(15_000);

    const after = new SittingSession(asBefore(shelf), shelf);
    expect(after.state).toBe("interrupted");
    after.resume(20_000);
    dialIt(after, 21_000);
    expect(after.state).toBe("finished");

    expect(after.facts(VERSION)).toMatchObject({ pauses: 1, interruptions: 1 });
    expect(after.facts(VERSION).breaks).toMatchObject([{ kind: "pause", length_ms: null }, { kind: "reload" }]);
    const { check, outcome } = await checked(after);
    expect(check.problems).toEqual([]);
    expect(outcome).toBe("passed");
  },
);
