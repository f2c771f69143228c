import { describe, expect, test } from "vitest";
import { changeTo } from "../../../../../../src/app/exercises/handover/run/session/changeWork";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import { type KeptRun, readKept, writeKept } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { takeZeroReading } from "../../../../../../src/app/exercises/handover/run/session/ringWork";
import { ACT_GROUPS } from "../../../../../../src/app/exercises/handover/run/session/runActs";
import { doorJoints } from "../../../../../../src/fitting/fit";
import { checksOf } from "../../../../../../src/fitting/fitChecks";
import type { FittingAct } from "../../../../../../src/fitting/fittingAct";
import { checkRun } from "../../../../../../src/handover/run/checkRun";
import { parseRun, writeRun } from "../../../../../../src/handover/run/recordedRun";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";
import { handoverRecord } from "../../../../../../src/records/handover/handoverRecord";
import { ELECTRONIC_ACTS, goodActs } from "../../../../../support/fitter";
import { RECORD_FACTS, RECORD_FORM } from "../../../../../support/savedHandoverRecord";

const ACTS = ACT_GROUPS.flatMap(({ acts }) => acts);

/** A run with a straight spindle in its tray, a height in range and a release that works; hands off. */
function begun(id: string) {
  for (let seed = 1; seed < 500; seed++) {
    const setup = { profile: shippedProfile(id), seed, isHandsOff: true, isToFit: true };
    let last: KeptRun | null = null;
    const session = new HandoverSession(setup, null, (kept) => {
      last = kept;
    });
    const { scene, fitting } = session.recorded;
    const isPlain = !scene.isReleaseBlocked && scene.height_in <= 48 && fitting?.bend.x_mm === 0;
    if (isPlain) return { session, setup, keptLast: () => last };
  }
  throw new Error("no seed gives such a door");
}

const trayOf = ({ tray }: HandoverSession) => {
  if (tray === null) throw new Error("nothing to fit");
  return tray;
};

function does(session: HandoverSession, ...labels: readonly string[]): void {
  for (const label of labels) {
    const act = ACTS.find((one) => one.label === label && (one.isOffered?.(session) ?? true));
    if (act === undefined) throw new Error(`${label} is not offered`);
    act.does(session, 0);
  }
}

/** Puts the lock together well, or with some acts otherwise, and checks it. */
function fits(
  session: HandoverSession,
  otherwise: (acts: readonly FittingAct[]) => readonly FittingAct[] = (as) => as,
) {
  const tray = trayOf(session);
  const electronic = tray.lock.isElectronic ? ELECTRONIC_ACTS : [];
  for (const act of otherwise([...electronic, ...goodActs(tray.lock)])) {
    if (act.type === "cover.put") for (const check of checksOf(tray.assembly)) tray.check(check);
    tray.act(act);
  }
  tray.check("cover");
}

const PREPARED = ["Measure the height", "Align the ring"];
const PROVED = [
  ...["Dial the combination", "Dial the combination", "Dial the combination"],
  ...["Let the second person open it", "Set the holdback", "Release the holdback"],
  ...["Test the inside release", "Show an observer the release and let them in", "Spin off", "Shut the door"],
  ...["Dial the combination", "Pull the door open", "Let the person inside out", "Spin off"],
];

/** Everything after the fit, as a careful technician does it, but for the signature. */
function proves(session: HandoverSession): void {
  does(session, ...PREPARED);
  if (session.setup.profile.kind === "dial-encoder")
    does(session, ...session.zeroing.setup.rules.order.map((side) => `Set the zero turning ${side}`));
  does(session, "Dial the combination");
  changeTo(session, session.drawOwn(), 0);
  for (let k = 0; k < 20 && session.run.situation.combination !== "ownTrue"; k++)
    changeTo(session, session.drawOwn(), 0);
  does(session, ...PROVED);
  session.writeRecord(RECORD_FORM, 0);
}

const codesOf = ({ run }: HandoverSession) => run.steps.flatMap(({ faults }) => faults);
const fileOf = ({ recorded, setup }: HandoverSession) => JSON.parse(writeRun(recorded, setup.profile.id));

describe.each(["two-wheel", "three-wheel", "dial-encoder"])("a lock fitted first, %s", (id) => {
  test("fitted well it is the lock that is aligned, dialed, changed, proved and handed over", () => {
    const { session } = begun(id);
    fits(session);
    does(session, "The lock is fitted");
    expect([session.told?.isHindered, session.run.situation.fit]).toEqual([false, "faultless"]);
    const { fit, lock } = trayOf(session);
    expect(session.lock.hand).toBe(session.zeroing.lock);
    expect(session.zeroing.lock.condition).toMatchObject(fit === null ? {} : doorJoints(fit, lock.perTurn));
    proves(session);
    session.act({ type: "duty.signed" }, 0);
    expect([session.run.isHandedOver, codesOf(session).filter((code) => code !== "set-off")]).toEqual([true, []]);
    const result = checkRun(parseRun(fileOf(session)));
    expect(result.fit).toEqual({ isTogether: true, faults: [], skipped: [] });
    const record = handoverRecord({ ...RECORD_FACTS, result });
    expect(record.fit).toEqual({ faults: [], skipped: [] });
    expect(record.proofs[0]).toEqual({ code: "fit-checked", isShown: true });
  });
});

describe("a lock fitted badly", () => {
  const inWrongKeyway = (acts: readonly FittingAct[]) =>
    acts.flatMap((act): FittingAct[] =>
      act.type === "dial.screwed" ? [act, { type: "dial.screwed", by: -25 }] : [act],
    );

  test("with its key in another keyway opens to no number as written, ring and all aligned", () => {
    const { session } = begun("three-wheel");
    fits(session, inWrongKeyway);
    does(session, "The lock is fitted", ...PREPARED);
    expect([session.run.situation.fit, session.run.situation.ring]).toEqual(["faulty", "aligned"]);
    does(session, "Dial the combination");
    expect(session.told?.words).toBe("You dialed it: it did not open.");
  });

  test("with its strike by one screw is handed over with a fault, and the end tells which", () => {
    const { session } = begun("three-wheel");
    fits(session, (acts) => acts.filter(({ type }) => type !== "strike.tightened"));
    does(session, "The lock is fitted");
    proves(session);
    session.act({ type: "duty.signed" }, 0);
    expect(session.run.isHandedOver).toBe(true);
    expect(session.run.steps.at(-1)?.faults).toEqual(["bad-fit-left"]);
    expect(checkRun(parseRun(fileOf(session))).fit?.faults).toEqual(["strike-by-one-screw"]);
  });

  test("without a strike has a door that nobody shuts", () => {
    const { session } = begun("three-wheel");
    fits(session, (acts) => acts.filter(({ type }) => !type.startsWith("strike.")));
    does(session, "The lock is fitted", "Shut the door");
    expect(session.told?.words).toContain("There is no strike on the frame");
    expect(session.run.situation.door).toBe("open");
  });

  test("and not checked is told at once, and cannot be signed off", () => {
    const { session } = begun("three-wheel");
    const tray = trayOf(session);
    for (const act of goodActs(tray.lock)) tray.act(act);
    does(session, "The lock is fitted");
    expect(codesOf(session)).toEqual(["fit-unchecked"]);
    session.act({ type: "duty.signed" }, 0);
    expect(session.run.steps.at(-1)?.missing).toContain("fit-checked");
  });

  test("is taken apart again: ring, zero and proofs are void, and the lock is as it was left", () => {
    const { session } = begun("dial-encoder");
    fits(session, (acts) => acts.filter(({ type }) => type !== "strike.tightened"));
    does(session, "The lock is fitted", ...PREPARED);
    const before = trayOf(session).assembly;
    does(session, "Take the lock apart again");
    expect(codesOf(session)).toContain("taken-apart");
    expect(session.run.situation).toMatchObject({ fit: "apart", fitChecks: "unmade", ring: "loose", zero: "notSet" });
    expect(trayOf(session).assembly).toEqual(before);
    trayOf(session).act({ type: "strike.tightened" });
    trayOf(session).act({ type: "cover.taken" });
    for (const check of checksOf(trayOf(session).assembly)) trayOf(session).check(check);
    trayOf(session).act({ type: "cover.put" });
    trayOf(session).check("cover");
    does(session, "The lock is fitted");
    expect(session.run.situation).toMatchObject({ fit: "faultless", fitChecks: "made" });
    expect(checkRun(parseRun(fileOf(session))).steps).toBe(session.run.steps.length);
  });
});

describe("an electronic lock whose board fails its self-check", () => {
  const dead = (acts: readonly FittingAct[]) => acts.filter(({ type }) => type !== "battery.connected");
  const harmed = (acts: readonly FittingAct[]) =>
    acts.flatMap((act): FittingAct[] => {
      if (act.type === "strap.put") return [];
      // Less than the share of touches that harm, and more than the third of it that kills.
      return [act.type === "cable.plugged" ? { ...act, luck: 0.2 } : act].map((one) =>
        one.type === "battery.connected" ? { ...one, luck: 0.99 } : one,
      );
    });
  const unplugged = (acts: readonly FittingAct[]) => acts.filter(({ type }) => type !== "cable.plugged");

  test.each([
    ["dead", dead, /^The lock is dead: it reads nothing/],
    ["harmed", harmed, /^Readings wander while the dial is at rest/],
    ["without its encoder", unplugged, /^The lock does not find its dial/],
  ] as const)("%s: neither zero nor number is taken, it is said why, and handing it over is a fault", (_, how, why) => {
    const { session, setup, keptLast } = begun("dial-encoder");
    fits(session, how);
    does(session, "The lock is fitted", ...PREPARED);
    expect([session.run.situation.fit, session.run.situation.ring]).toEqual(["faulty", "aligned"]);
    const [side = "right"] = session.zeroing.setup.rules.order;
    does(session, `Set the zero turning ${side}`);
    expect(session.told).toMatchObject({ isHindered: true, words: expect.stringMatching(why) });
    takeZeroReading(session, 0);
    expect([session.told?.words.match(why) !== null, session.zeroing.memory.accepted[side]]).toEqual([true, []]);
    does(session, "Dial the combination");
    expect(session.told).toMatchObject({ words: "You dialed it: it did not open." });
    expect(session.told?.consequences.at(-1)).toMatch(why);
    changeTo(session, session.drawOwn(), 0);
    expect(session.told).toMatchObject({ isHindered: true, words: expect.stringMatching(why) });
    expect([session.door.opensAsWritten, session.run.situation]).toMatchObject([
      false,
      { zero: "notSet", combination: "shipped", shippedTry: "untried" },
    ]);
    const kept = keptLast();
    const again = new HandoverSession(setup, kept, () => {});
    does(again, "Dial the combination");
    expect(again.told?.consequences.at(-1)).toMatch(why);
  });

  test("a file that says such a lock opened is refused, with the reason", () => {
    const { session } = begun("dial-encoder");
    fits(session, dead);
    does(session, "The lock is fitted", ...PREPARED, "Dial the combination");
    const file = fileOf(session);
    const events = file.events.map((one: object) => ("opened" in one ? { ...one, opened: true } : one));
    expect(() => checkRun(parseRun({ ...file, events }))).toThrow(/The lock is dead/);
  });

  test("opens again once it is taken apart and connected right", () => {
    const { session } = begun("dial-encoder");
    fits(session, dead);
    does(session, "The lock is fitted", "Take the lock apart again");
    const tray = trayOf(session);
    tray.act({ type: "cover.taken" });
    tray.act({ type: "battery.connected", leads: "right", luck: 0 });
    for (const check of checksOf(tray.assembly)) tray.check(check);
    tray.act({ type: "cover.put" });
    tray.check("cover");
    does(session, "The lock is fitted");
    proves(session);
    session.act({ type: "duty.signed" }, 0);
    expect(session.run.isHandedOver).toBe(true);
    expect(checkRun(parseRun(fileOf(session))).fit?.faults).toEqual([]);
  });
});

describe("a fitting in a run", () => {
  test("goes on after a reload with every part where it was, and every check that was made", () => {
    const { session, setup, keptLast } = begun("three-wheel");
    fits(session);
    const kept = keptLast();
    if (kept === null) throw new Error("nothing was kept");
    const { marked } = readKept(JSON.parse(JSON.stringify(writeKept(kept))));
    const again = new HandoverSession(setup, marked?.kept ?? null, () => {});
    expect(trayOf(again).assembly).toEqual(trayOf(session).assembly);
    expect(trayOf(again).chart.getSnapshot().context.checks).toEqual(
      trayOf(session).chart.getSnapshot().context.checks,
    );
    does(again, "The lock is fitted");
    expect(again.run.situation).toMatchObject({ fit: "faultless", fitChecks: "made" });
  });

  test("goes on after a reload with what its checks showed", () => {
    const { session, setup, keptLast } = begun("three-wheel");
    fits(session);
    trayOf(session).check("cover");
    const again = new HandoverSession(setup, keptLast(), () => {});
    const shownBy = (one: HandoverSession) =>
      checksOf(trayOf(one).assembly).map((kind) => trayOf(one).log.find((seen) => seen.kind === kind));
    expect(shownBy(session)).not.toContain(undefined);
    expect(shownBy(again)).toEqual(shownBy(session));
  });

  test("is as it was put when the word that it is fitted is undone in the debrief, and a step before it loses nothing", () => {
    const { session, setup, keptLast } = begun("three-wheel");
    does(session, "Measure the height");
    fits(session);
    const { assembly, acts } = trayOf(session);
    session.goBackTo(0);
    expect([trayOf(session).assembly, trayOf(session).acts]).toEqual([assembly, acts]);
    does(session, "The lock is fitted", ...PREPARED, "Take the lock apart again");
    session.goBackTo(0);
    expect(session.run.situation.fit).toBe("apart");
    expect([trayOf(session).assembly, trayOf(session).acts]).toEqual([assembly, acts]);
    const again = new HandoverSession(setup, keptLast(), () => {});
    expect(trayOf(again).assembly).toEqual(assembly);
    does(again, "The lock is fitted");
    expect(again.run.situation).toMatchObject({ fit: "faultless", fitChecks: "made" });
    expect(checkRun(parseRun(fileOf(again))).fit?.faults).toEqual([]);
  });

  test("is not said to be fitted while parts are in the tray, and nothing else is done with it", () => {
    const { session } = begun("three-wheel");
    does(session, "The lock is fitted");
    expect(session.told).toMatchObject({
      isHindered: true,
      words: expect.stringMatching(/^Parts are still in the tray/),
    });
    for (const label of ["Align the ring", "Dial the combination", "Spin off", "Shut the door"]) {
      does(session, label);
      expect(session.told?.words).toMatch(/^The lock is in parts/);
    }
    does(session, "Send for new parts");
    expect(session.told?.words).toBe("These parts can still become a good lock.");
    expect(session.run.steps).toEqual([]);
  });

  test("with spoiled parts goes on with new ones, and that is a fault", () => {
    const { session } = begun("three-wheel");
    trayOf(session).act({ type: "locker.dropped", at: "wheels" });
    does(session, "The lock is fitted", "Send for new parts");
    expect(codesOf(session)).toEqual(["parts-spoiled"]);
    fits(session);
    does(session, "The lock is fitted");
    expect(session.run.situation.fit).toBe("faultless");
    expect(checkRun(parseRun(fileOf(session))).fit?.faults).toEqual([]);
  });

  test("cannot be said to be another than its acts make it", () => {
    const { session } = begun("three-wheel");
    fits(session);
    does(session, "The lock is fitted");
    const file = fileOf(session);
    const [fitted] = file.events;
    const with_ = (change: object) => () => checkRun(parseRun({ ...file, events: [{ ...fitted, ...change }] }));
    expect(with_({})).not.toThrow();
    expect(with_({ isFaultless: false })).toThrow(/step 1 .*says isFaultless false.*set isFaultless to true/);
    expect(with_({ checks: [] })).toThrow(/isChecked to false/);
    // A file of before there were these two checks says with right that every check was made.
    const ofBefore = { checks: fitted.checks.filter((check: string) => check !== "nose" && check !== "side") };
    expect(with_(ofBefore)).toThrow(/isChecked to false/);
    expect(with_({ ...ofBefore, checkSet: undefined })().fit?.skipped).toEqual([]);
    expect(with_({ checkSet: 3 })).toThrow(/checkSet/);
    expect(with_({ acts: fitted.acts.slice(1, 4) })).toThrow(/parts are still in the tray/);
    expect(with_({ acts: [{ type: "key.put" }] })).toThrow(/acts\[0\], key\.put, .*: The dial is in the tray/);
    expect(with_({ acts: [{ type: "key.put", by: 1 }, { type: "nothing" }] })).toThrow(/acts/);
  });
});

test("a file of 200,000 acts on a lock is checked in a time that grows with it", { timeout: 20_000 }, () => {
  const { session } = begun("three-wheel");
  fits(session);
  does(session, "The lock is fitted");
  const [fitted] = session.recorded.events;
  if (fitted?.type !== "lock.fitted") throw new Error("the run begins otherwise");
  const cover = [{ type: "cover.taken" }, { type: "cover.put" }] as const;
  const acts = Array.from({ length: 1000 }, () => cover).flat();
  const again = [{ type: "lock.takenApart", at_ms: 0 } as const, { ...fitted, acts }];
  const events = [fitted, ...Array.from({ length: 100 }, () => again).flat()];
  expect(checkRun({ ...session.recorded, events }).fit).toEqual({ isTogether: true, faults: [], skipped: [] });
});
