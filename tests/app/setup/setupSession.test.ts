import { describe, expect, it } from "vitest";
import { SetupSession } from "../../../src/app/setup/session/setupSession";

/** A dial that rests for so long, looked at ten times a second. */
function rest(session: SetupSession, lasts_ms: number): void {
  for (let at = 0; at <= lasts_ms; at += 100) session.look(at, true);
}

describe("the 0 of a setup", () => {
  it.each([
    ["a knob without numbers of its own has its 0 where the person says so, however long it rests before", false],
    ["a dial with numbers of its own has its 0 once it rests there", true],
  ] as const)("%s", (_, hasNumbers) => {
    const session = new SetupSession(100, "connect");
    session.beginZero(hasNumbers);
    rest(session, 3000);
    expect(session.isZeroed).toBe(hasNumbers);
    session.setZero();
    expect(session.isZeroed).toBe(true);
  });
});
