import fc from "fast-check";
import { describe, expect, test } from "vitest";
import clean from "../../../shared/handovers/clean.json" with { type: "json" };
import { changeTo } from "../../../src/app/exercises/handover/run/session/changeWork";
import { HandoverSession } from "../../../src/app/exercises/handover/run/session/handoverSession";
import { ACT_GROUPS } from "../../../src/app/exercises/handover/run/session/runActs";
import { checkRun } from "../../../src/handover/run/checkRun";
import { parseRun, writeRun } from "../../../src/handover/run/recordedRun";
import { RunError } from "../../../src/handover/run/rules/runError";
import { RUN_WORDS } from "../../../src/handover/run/rules/runWords";
import { MISFITS } from "../../../src/handover/run/sceneFit";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";
import { EVENTS } from "../../support/handoverEvents";

const check = (value: unknown) => checkRun(parseRun(value));
const encoder = SHIPPED_PROFILES.find(({ kind }) => kind === "dial-encoder")?.id;
const isBlocked = { ...clean.scene, isReleaseBlocked: true };
const opened = { type: "combination.dialed", by: "trainee", opened: true };

/** A run of some events, one after another. */
const run = (events: readonly object[], more: object = {}) => ({
  ...clean,
  ...more,
  events: events.map((event, k) => ({ at_ms: 1000 * k, ...event })),
});

describe("a step that does not fit the scene or its lock is refused with its number and the way to fix it", () => {
  test.each([
    [
      "a height that is not the scene's",
      run([{ type: "mounting.measured", height_in: 40 }]),
      /^step 1 \(events\[0\]\), mounting.measured, says 40 inches, but the scene's height_in is 44: make the two the same$/,
    ],
    [
      "a zero on a wheel pack",
      run([{ type: "ring.aligned" }, { type: "zero.set", side: "left" }]),
      /^step 2 \(events\[1\]\), zero.set, does not fit the lock, a wheel pack.*: take it out, or name/,
    ],
    [
      "a change key in an encoder lock",
      run([{ type: "combination.changed", outcome: "spoiled", isAllowed: true }], { profile: encoder }),
      /^step 1 .*does not fit the lock, a dial encoder, which has neither change key nor wheels: take it out, or name/,
    ],
    [
      "a pack built again in an encoder lock",
      run([{ type: "pack.rebuilt" }], { profile: encoder }),
      /^step 1 .*pack.rebuilt, does not fit/,
    ],
    [
      "an opening while the bolt is held",
      run([opened, { type: "holdback.set" }, opened]),
      /^step 3 .*the holdback holds its bolt.*: set opened to false, or release/,
    ],
    [
      "a blocked release that is found free",
      run([{ type: "wayOut.checked", isFree: true }], { scene: isBlocked }),
      /^step 1 .*says that the release is free, but the scene has it blocked.*: correct the step, or isReleaseBlocked/,
    ],
    [
      "a free release that is found blocked",
      run([{ type: "wayOut.checked", isFree: false }]),
      /^step 1 .*says that the release does not move, but nothing is in its way/,
    ],
    [
      "a release that is found free and fails",
      run([
        opened,
        { type: "observer.entered", canOpen: true },
        { type: "bolt.thrown" },
        { type: "door.shut" },
        { type: "release.failed" },
      ]),
      /^step 5 .*says that the release did not move/,
    ],
    [
      "a door opened from inside by a blocked release",
      run([{ type: "observer.entered", canOpen: true }, { type: "door.shut" }, { type: "door.opened", by: "inside" }], {
        scene: isBlocked,
      }),
      /^step 3 .*opened from inside, but its release is blocked: use release.failed, correct/,
    ],
    [
      "a time that goes backward, the debrief in between not counted as a step",
      run([{ type: "door.shut" }, { type: "run.wentBack", steps: 0 }, { type: "door.shut", at_ms: 3 }]),
      /^step 2 \(events\[2\]\), door.shut, has at_ms 3, earlier than 1000 before it: put the events in their order/,
    ],
    [
      "what cannot follow",
      run([{ type: "observer.left" }]),
      /^step 1 .*observer.left, cannot have happened, so take it out or add what came before it: Nobody is inside/,
    ],
    [
      "more than there is to go back",
      run([{ type: "door.shut" }, { type: "run.wentBack", steps: 2 }]),
      /^events\[1\], run.wentBack, goes back to step 2, but only 1 step counts by then: name 1 or fewer/,
    ],
  ])("%s", (_, value, words) => {
    expect(() => check(value)).toThrow(RunError);
    expect(() => check(value)).toThrow(words);
  });

  test("a release that was cleared is free, until the debrief takes that back", () => {
    const cleared = [
      { type: "wayOut.checked", isFree: false },
      { type: "wayOut.cleared" },
      { type: "wayOut.checked", isFree: true },
    ];
    const back = [
      { type: "run.wentBack", steps: 0 },
      { type: "wayOut.checked", isFree: true },
    ];
    expect(() => check(run(cleared, { scene: isBlocked }))).not.toThrow();
    expect(() => check(run([...cleared, ...back], { scene: isBlocked }))).toThrow(/^step 4 \(events\[4\]\)/);
  });

  test("every misfit says how to fix it", () => {
    for (const { code } of MISFITS)
      expect(RUN_WORDS[code]).toMatch(/^(does not fit|says that) [^:]+: (take|set|use|correct) /);
  });
});

describe("fuzz", () => {
  const ACTS = ACT_GROUPS.flatMap(({ acts }) => acts);

  test("whatever is done on the screen, its file is taken back", () => {
    const act = fc.oneof(fc.constantFrom(...ACTS.keys()), fc.constantFrom("change", "back", "record", "sign"));
    const profile = fc.constantFrom(...SHIPPED_PROFILES);
    fc.assert(
      fc.property(profile, fc.integer({ min: 1, max: 999 }), fc.array(act, { maxLength: 30 }), (lock, seed, acts) => {
        const session = new HandoverSession({ profile: lock, seed, isHandsOff: true }, null, () => {});
        for (const [k, one] of acts.entries()) doOn(session, one, 1000 * k);
        const file = JSON.parse(writeRun(session.recorded, lock));
        expect(check(file).steps).toBe(session.run.steps.length);
      }),
      { numRuns: 30 },
    );
  });

  test("whatever is changed in a file, it is a run or a sentence with its place", () => {
    const event = fc.constantFrom<object>(...EVENTS, { type: "run.wentBack", steps: 2 });
    const change = fc.tuple(fc.nat(25), fc.nat(2), event);
    const lock = fc.constantFrom("three-wheel", encoder);
    let refused = 0;
    fc.assert(
      fc.property(lock, fc.boolean(), fc.array(change, { maxLength: 5 }), (profile, isReleaseBlocked, changes) => {
        const events = [...clean.events] as object[];
        for (const [at, gone, one] of changes) events.splice(at, gone, one);
        const value = run(
          events.map((one, k) => ({ ...one, at_ms: 1000 * k })),
          { profile, scene: { ...clean.scene, isReleaseBlocked } },
        );
        try {
          check(value);
        } catch (error) {
          refused += 1;
          expect(error).toBeInstanceOf(RunError);
          expect((error as RunError).message).toMatch(/^(step \d+ \(events\[\d+\]\)|events\[\d+\]), [\w.]+, [^:]+: ./);
        }
      }),
      { numRuns: 300 },
    );
    expect(refused).toBeGreaterThan(0);
  });

  const SPECIAL: Readonly<Record<string, (session: HandoverSession, now: number) => void>> = {
    change: (session, now) => changeTo(session, session.drawOwn(), now),
    back: (session) => session.goBackTo(Math.floor(session.run.length / 2)),
    record: (session, now) => session.act({ type: "record.written" }, now),
    sign: (session, now) => session.act({ type: "duty.signed" }, now),
  };

  function doOn(session: HandoverSession, act: number | string, now: number): void {
    if (typeof act === "string") SPECIAL[act]?.(session, now);
    else if (ACTS[act]?.isOffered?.(session) ?? true) ACTS[act]?.does(session, now);
  }
});
