import { expect, test } from "vitest";
import clean from "../../../../../../shared/handovers/clean.json" with { type: "json" };
import { recordOf } from "../../../../../../src/app/exercises/handover/run/kept/runRecord";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import { NOTHING_KEPT } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { checkRun } from "../../../../../../src/handover/run/checkRun";
import { parseRun, type RecordedRun } from "../../../../../../src/handover/run/recordedRun";
import { describeSource } from "../../../../../../src/realdial/sources/sourceDescription";
import { RECORD_FORM } from "../../../../../support/savedHandoverRecord";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);

/** The record of a clean handover, its dial turned as the run says. */
function recordAfter(turned: Pick<RecordedRun, "sources" | "doubts">) {
  const run = { ...parseRun(clean), ...turned };
  const { profile, seed, isHandsOff } = run;
  const session = new HandoverSession({ profile, seed, isHandsOff }, { ...NOTHING_KEPT, run, form: RECORD_FORM });
  return recordOf(session, checkRun(session.recorded));
}

test("the record of a handover names what turned its dial, and why its turns are in doubt", () => {
  const turned = { sources: [ENCODER], doubts: ["disconnected"] } as const;
  expect(recordAfter(turned)).toMatchObject(turned);
});

test("the record of a handover that the screen alone turned names neither", () => {
  const record = recordAfter({});
  expect(record).toMatchObject(RECORD_FORM);
  expect(record).not.toHaveProperty("sources");
  expect(record).not.toHaveProperty("doubts");
});
