import { afterEach, describe, expect, test, vi } from "vitest";
import { changeTo } from "../../../../src/app/exercises/handover/run/session/changeWork";
import { replaceParts } from "../../../../src/app/exercises/handover/run/session/doorFitting";
import { HandoverSession } from "../../../../src/app/exercises/handover/run/session/handoverSession";
import { ACT_GROUPS } from "../../../../src/app/exercises/handover/run/session/runActs";
import { HandoverTry } from "../../../../src/app/sittings/tries/handoverTry";
import { isRight } from "../../../../src/drill/marking/tryResult";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { handoverStation } from "../../../support/testSheet";
import { setupOf } from "../jobTries";

afterEach(() => void vi.unstubAllGlobals());

const STATION = handoverStation();
const FORM = {
  ...{
    technician: "P. Underbell",
    second: "R. Tarn",
    takenOverBy: "D. Mallow",
    authorizedBy: "",
    lock: "Lock 1",
    door: "Door 1",
  },
  ...{ date: "2026-11-26", holders: "D. Mallow", remarks: "" },
};

/** A try whose exercise tells it of every step. @param isWanted - which door and hand, by the run's own draw */
function inHand(isWanted: (session: HandoverSession) => boolean = () => true) {
  for (let seed = 1; seed < 200; seed++) {
    const one = new HandoverTry(setupOf(STATION, seed));
    if (!isWanted(one.session)) continue;
    let now = 0;
    one.session.subscribe(() => one.worked(now));
    const does = (...labels: string[]) => {
      for (const label of labels) {
        now += 1000;
        acts(label)(one.session, now);
      }
    };
    return { one, session: one.session, does, at: () => now };
  }
  throw new Error("no seed has such a door");
}

/** What a button of the run does, by its name. */
function acts(label: string) {
  const act = ACT_GROUPS.flatMap((group) => group.acts).find((one) => one.label === label);
  if (act === undefined) throw new Error(`there is no ${label}`);
  return act.does;
}

const isPlain = ({ recorded: { scene } }: HandoverSession) => scene.height_in < 48 && !scene.isReleaseBlocked;

/** A run with nothing left out. @param slips - whether the simulated hand sets the combination off at first */
function wholeRun(slips: boolean) {
  const hand = inHand((session) => isPlain(session) && slipsAtFirst(session.setup.seed) === slips);
  const { one, session, does, at } = hand;
  does("Measure the height", "Align the ring", "Dial the combination", "Spin off");
  while (session.run.situation.combination !== "ownTrue") changeTo(session, session.drawOwn(), at());
  for (let k = 0; k < 3; k++) does("Dial the combination", "Spin off");
  does("Let the second person open it", "Set the holdback", "Release the holdback", "Test the inside release");
  does("Show an observer the release and let them in", "Spin off", "Shut the door", "Dial the combination");
  does("Pull the door open", "Let the person inside out", "Spin off");
  session.writeRecord(FORM, at());
  const endedBefore = one.isEnded;
  session.act({ type: "duty.signed" }, at());
  return { ...hand, endedBefore };
}

/** Whether the first change of a run with this seed goes wrong: the same steps are made in another run. */
function slipsAtFirst(seed: number): boolean {
  const trial = new HandoverSession({ profile: shippedProfile("three-wheel"), seed, isHandsOff: true }, null, () => {});
  for (const label of ["Measure the height", "Align the ring", "Dial the combination", "Spin off"])
    acts(label)(trial, 0);
  changeTo(trial, trial.drawOwn(), 0);
  return trial.run.situation.combination === "ownOff";
}

describe("a try at a handover", () => {
  test("every step in order and signed: clean, right, and over with the signature", () => {
    const { one, endedBefore, at } = wholeRun(false);
    const result = one.result();
    expect([endedBefore, one.isEnded]).toEqual([false, true]);
    expect(result).toMatchObject({ kind: "handover", isHandedOver: true, missing: [], faults: [], undone: 0 });
    expect(isRight(result, STATION)).toBe(true);
    expect(result.time_ms).toBe(at() - 1000);
  });

  test("a number that the simulated hand set off and that was mended is still a fault", () => {
    const { one } = wholeRun(true);
    expect(one.result()).toMatchObject({ isHandedOver: true, missing: [], faults: [{ code: "set-off" }] });
    expect(isRight(one.result(), STATION)).toBe(false);
  });

  test("signed too early is signed: what is missing and the faults go into the result, not onto the screen", () => {
    const { one, session, does, at } = inHand(isPlain);
    does("Measure the height", "Shut the door");
    session.act({ type: "duty.signed" }, at());
    expect(one.isEnded).toBe(true);
    const result = one.result();
    expect(result).toMatchObject({ isHandedOver: false, undone: 0 });
    expect(result.missing).toContain("own-combination");
    expect(result.faults.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["shut-unproved", "signed-too-early"]),
    );
    expect(isRight(result, STATION)).toBe(false);
  });

  test("a look at the ring begins it, and a run begun on the handover page is left as it was", () => {
    const kept = vi.fn();
    vi.stubGlobal("localStorage", { setItem: kept, getItem: kept, removeItem: kept });
    const { one, does } = inHand(isPlain);
    for (const store of one.exercise) store.subscribe(() => one.worked(50));
    one.session.zeroing.turnRing(0.5);
    expect(one.isBegun).toBe(true);
    does("Measure the height");
    expect(kept).not.toHaveBeenCalled();
  });

  test("is the same door for everybody with the sheet and its seed", () => {
    const scene = (seed: number) => new HandoverTry(setupOf(STATION, seed)).session.recorded.scene;
    expect(scene(3)).toEqual(scene(3));
    expect(Array.from({ length: 5 }, (_, k) => scene(k + 4))).not.toEqual(Array(5).fill(scene(3)));
  });
});

test.each(["full", "counts", "silent"] as const)(
  "a station that fits its lock first has its help, %s, in the tray, with new parts too",
  (help) => {
    const { session } = new HandoverTry(setupOf(handoverStation({ fit: "first", help })));
    expect(session.tray?.help).toBe(help);
    session.tray?.act({ type: "spindle.cut", length_mm: 40 });
    session.tray?.act({ type: "spindle.replaced" });
    session.tray?.act({ type: "spindle.cut", length_mm: 40 });
    const spoiled = session.tray;
    replaceParts(session, 0);
    expect(session.tray).not.toBe(spoiled);
    expect(session.tray?.help).toBe(help);
  },
);
