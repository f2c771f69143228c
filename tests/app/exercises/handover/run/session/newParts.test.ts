import { expect, test } from "vitest";
import { replaceParts } from "../../../../../../src/app/exercises/handover/run/session/doorFitting";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import { type KeptRun, readKept, writeKept } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { checkRun } from "../../../../../../src/handover/run/checkRun";
import { parseRun, writeRun } from "../../../../../../src/handover/run/recordedRun";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";

const SETUP = { profile: shippedProfile("three-wheel"), seed: 11, isHandsOff: true, isToFit: true };
const SPOILING = [
  { type: "spindle.cut", length_mm: 40 },
  { type: "spindle.replaced" },
  { type: "spindle.cut", length_mm: 40 },
] as const;

function begun() {
  let last: KeptRun | null = null;
  const keep = (kept: KeptRun) => {
    last = kept;
  };
  const session = new HandoverSession(SETUP, null, keep);
  const reloaded = () => {
    const { marked } = readKept(JSON.parse(JSON.stringify(last && writeKept(last))));
    return new HandoverSession(SETUP, marked?.kept ?? null, () => {});
  };
  return { session, reloaded };
}

const spoil = ({ tray }: HandoverSession) => SPOILING.forEach((act) => void tray?.act(act));
const partsOf = ({ tray }: HandoverSession) => ({ lock: tray?.lock, assembly: tray?.assembly });
const stageIn = ({ tray }: HandoverSession) => tray?.chart.getSnapshot().value;

test("new parts are sent for once the old are spoiled, and a reload finds them", () => {
  const { session, reloaded } = begun();
  replaceParts(session, 0);
  expect(session.told?.words).toBe("These parts can still become a good lock.");
  spoil(session);
  expect([stageIn(session), stageIn(reloaded())]).toEqual(["spent", "spent"]);
  replaceParts(session, 0);
  expect(stageIn(session)).toBe("apart");
  expect(session.tray?.assembly.spares).toBe(1);
  expect(partsOf(reloaded())).toEqual(partsOf(session));
  expect(session.run.steps.at(-1)?.faults).toEqual(["parts-spoiled"]);
});

test("undone, the parts are spoiled again as they were; sent for again, the new ones are the same", () => {
  const { session, reloaded } = begun();
  spoil(session);
  const spoiled = partsOf(session);
  replaceParts(session, 0);
  const first = partsOf(session);
  session.goBackTo(0);
  expect([partsOf(session), stageIn(session)]).toEqual([spoiled, "spent"]);
  expect(partsOf(reloaded())).toEqual(spoiled);
  const again = reloaded();
  replaceParts(session, 0);
  replaceParts(again, 0);
  expect([partsOf(session), partsOf(again)]).toEqual([first, first]);
  for (const { recorded } of [session, again]) {
    expect(() => checkRun(parseRun(JSON.parse(writeRun(recorded, SETUP.profile.id))))).not.toThrow();
  }
});
