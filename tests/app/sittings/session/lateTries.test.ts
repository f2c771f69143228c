import { describe, expect, test } from "vitest";
import { keptTryWrite, tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { DialingTry } from "../../../../src/app/sittings/tries/dialingTry";
import { trySetup } from "../../../../src/app/sittings/tries/trySetup";
import { ZeroingTry } from "../../../../src/app/sittings/tries/zeroingTry";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { isRight } from "../../../../src/drill/marking/tryResult";
import type { Station } from "../../../../src/drill/sheet/sheet";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { attemptSchema } from "../../../../src/records/attemptRecord";
import { RECORD_SCHEMAS } from "../../../../src/records/records";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { dialingStation, testSheet, zeroingStation } from "../../../support/testSheet";

const OWNER = { sittingId: "sitting", personId: "person", index: 2, now_ms: 1_800_000_000_000 };
const COMBINATION = shippedProfile("three-wheel").asSet ?? [];
const LIMIT = { timeLimit_s: 2 };

const setupOf = (station: Station) => {
  const combination = station.kind === "dialing" ? COMBINATION : null;
  return trySetup(testSheet({ stations: [station] }), { station: 0, repetition: 1, combination }, 3, 0);
};

/** Dialed true. @param step_ms - from one motion to the next */
function dialed(step_ms: number): DialingTry {
  const one = new DialingTry(setupOf(dialingStation(LIMIT)));
  const path = idealMotion(one.attempt.profile, COMBINATION, one.dial, [], 5);
  path.slice(1).forEach((position, i) => {
    one.turnBy(position - (path[i] ?? 0), step_ms * i);
  });
  return one;
}

function zeroed(time_ms: number): ZeroingTry {
  const one = new ZeroingTry(setupOf(zeroingStation(LIMIT)));
  one.turnBy(30, 0);
  one.takeReading(time_ms);
  one.end();
  return one;
}

describe("a try of a sitting that took longer than its station allows", () => {
  test("opened the lock all the same, and its record says that it was late", () => {
    const one = dialed(1000);
    expect(isRight(one.result(), one.setup.station)).toBe(false);
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({ opened: true, isLate: true });
    expect(keptTryWrite(one.setup, one.result(), { motion: one.motion }, OWNER)).toEqual(write);
    expect(attemptSchema.parse(write.record)).toHaveProperty("isLate", true);
  });

  test("says nothing where it was in time", () => {
    const one = dialed(1);
    expect(isRight(one.result(), one.setup.station)).toBe(true);
    expect(tryWrite(one, OWNER).record).not.toHaveProperty("isLate");
  });

  test("at setting zero is late too", () => {
    const [late, timely] = [zeroed(2001), zeroed(2000)].map((one) => {
      const write = tryWrite(one, OWNER);
      expect(() => checkWrite(write)).not.toThrow();
      const kept = keptTryWrite(one.setup, one.result(), { motion: null }, OWNER);
      expect(kept?.record).toEqual({ ...write.record, details: { sittingId: "sitting" } });
      return RECORD_SCHEMAS.zeroings.parse(write.record);
    });
    expect(late).toHaveProperty("isLate", true);
    expect(timely).not.toHaveProperty("isLate");
  });
});
