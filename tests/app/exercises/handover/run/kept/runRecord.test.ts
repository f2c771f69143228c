import { expect, test } from "vitest";
import { recordOf } from "../../../../../../src/app/exercises/handover/run/kept/runRecord";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import { checkRun } from "../../../../../../src/handover/run/checkRun";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";
import { describeSource } from "../../../../../../src/realdial/sources/sourceDescription";
import { RECORD_FORM } from "../../../../../support/savedHandoverRecord";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const SETUP = { profile: shippedProfile("three-wheel"), seed: 7, isHandsOff: false };

/** The record of a run, written at once. */
function recordAfter(turn: (session: HandoverSession) => void) {
  const session = new HandoverSession(SETUP);
  turn(session);
  session.writeRecord(RECORD_FORM, 10);
  return recordOf(session, checkRun(session.recorded));
}

test("the record of a handover names what turned its dial, and why its turns are in doubt", () => {
  const turned = recordAfter((session) => {
    session.noteSource(ENCODER);
    session.noteDoubt("disconnected");
  });
  expect(turned).toMatchObject({ sources: [ENCODER], doubts: ["disconnected"] });
});

test("the record of a handover that the screen alone turned names neither", () => {
  const turned = recordAfter((session) => session.noteSource());
  expect(turned).not.toBeNull();
  expect(turned).not.toHaveProperty("sources");
  expect(turned).not.toHaveProperty("doubts");
});
