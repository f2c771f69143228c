import { describe, expect, test } from "vitest";
import { newProgress } from "../../../../src/app/sittings/session/sittingProgress";
import { SittingSession } from "../../../../src/app/sittings/session/sittingSession";
import type { SittingShelf } from "../../../../src/app/sittings/session/sittingShelf";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import type { Sheet, SittingRules } from "../../../../src/drill/sheet/sheet";
import { memoryShelf, refusingShelf } from "../../../support/memoryShelf";
import { dialingStation, testSheet, troubleStation, zeroingStation } from "../../../support/testSheet";

const RULES: SittingRules = { pauseAllowed: true, onReload: "resume", clockHideable: true };

const sheetOf = (rules: Partial<SittingRules> = {}, fields: Partial<Sheet> = {}): Sheet =>
  testSheet({
    stations: [dialingStation({ repetitions: 2, passMarks: { firstTime: 2 } })],
    sitting: { ...RULES, questions: { topics: [{ topic: "zeroing", count: 2 }], passMark: 1 }, ...rules },
    ...fields,
  });

const begun = (sheet: Sheet, shelf: SittingShelf = memoryShelf()) => {
  const session = new SittingSession(newProgress({ id: "one", sheet, seed: 5, person: null, personId: null }), shelf);
  session.readInstructions();
  session.start(1000);
  return session;
};

/** The page loaded anew. */
const reloaded = (shelf: SittingShelf) => {
  const { progress } = shelf;
  if (progress === null) throw new Error("nothing was kept");
  return new SittingSession(progress, shelf);
};

/** Dials the try in hand. @param stopErrors - graduations past each number */
const dialIt = (session: SittingSession, now: number, stopErrors: readonly number[] = []) => {
  const one = session.inHand;
  if (one?.kind !== "dialing") throw new Error("no dial is in hand");
  const { profile, combination } = one.attempt;
  const path = idealMotion(profile, combination, one.dial, stopErrors, 5);
  path.slice(1).forEach((position, i) => {
    session.turnBy(position - (path[i] ?? 0), now + i * 1000, now + i * 1000);
  });
};

const rightPlace = ({ question }: SittingSession) => question?.order.indexOf(question.question.answer) ?? -1;

describe("a sitting", () => {
  test("goes from its instructions through tries and questions to its end", () => {
    const shelf = memoryShelf();
    const session = begun(sheetOf(), shelf);
    dialIt(session, 2000);
    expect(session.state).toBe("atStation");
    expect(session.inHand?.isEnded).toBe(true);
    session.takeNext();
    dialIt(session, 9000, [0, 4]);
    expect(session.state).toBe("answering");
    session.answer(rightPlace(session), 20_000);
    session.answer((rightPlace(session) + 1) % 3, 21_000);
    expect(session.state).toBe("finished");
    const facts = session.facts("1");
    expect(facts.tries.map((one) => one.kind === "dialing" && one.opened)).toEqual([true, false]);
    expect(facts.answers.map(({ isRight }) => isRight)).toEqual([true, false]);
    expect(facts).toMatchObject({ ended: "finished", worked_ms: 20_000, interruptions: 0 });
    expect(shelf.answers).toHaveLength(2);
    expect(shelf.motion(0)?.positions.length).toBeGreaterThan(3);
  });

  test("ends a try once, and lets nothing turn after it", () => {
    const session = begun(sheetOf());
    dialIt(session, 2000);
    const before = session.inHand?.version;
    session.turnBy(50, 9000, 9000);
    expect(session.inHand?.version).toBe(before);
    expect(session.results).toHaveLength(1);
  });

  test("keeps all there is after every event, so that a crash loses only the try under way", () => {
    const shelf = memoryShelf();
    const session = begun(sheetOf(), shelf);
    session.turnBy(10, 2000, 2000);
    const again = reloaded(shelf);
    expect(again.state).toBe("interrupted");
    expect(again.results).toMatchObject([{ isBrokenOff: true }]);
    again.resume(5000);
    dialIt(again, 6000);
    const third = reloaded(shelf);
    expect(third.results).toMatchObject([{ isBrokenOff: true }, { opened: true }]);
    third.resume(20_000);
    third.answer(rightPlace(third), 21_000);
    const last = reloaded(shelf);
    expect(last.answers).toHaveLength(1);
    expect(last.memory.interruptions).toBe(3);
  });

  test("gives the same try after a reload between tries", () => {
    const shelf = memoryShelf();
    const session = begun(sheetOf(), shelf);
    const again = reloaded(shelf);
    again.resume(5000);
    const [one, other] = [session.inHand, again.inHand];
    expect(one?.kind === "dialing" && one.motion.start).toEqual(other?.kind === "dialing" && other.motion.start);
    expect(again.results).toEqual([]);
  });

  test("is broken off by a reload where its sheet says so", () => {
    const shelf = memoryShelf();
    begun(sheetOf({ onReload: "broken-off" }), shelf).turnBy(10, 2000, 2000);
    const again = reloaded(shelf);
    expect(again.state).toBe("brokenOff");
    expect(again.facts("1").ended).toBe("broken-off");
  });

  test("stays as it ended when the page is loaded anew", () => {
    const shelf = memoryShelf();
    const session = begun(sheetOf(), shelf);
    session.abandon(4000);
    expect(reloaded(shelf).facts("1")).toEqual(session.facts("1"));
  });

  test("counts the time to the last moment it was seen", () => {
    const shelf = memoryShelf();
    begun(sheetOf(), shelf).tick(8000);
    expect(reloaded(shelf).worked(99_000)).toBe(7000);
  });

  test("ends when its time is up", () => {
    const session = begun(sheetOf({ timeLimit_s: 10 }));
    session.tick(10_999);
    expect(session.state).toBe("atStation");
    session.tick(11_000);
    expect(session.facts("1").ended).toBe("time");
  });

  test("takes no try that ends after its time", () => {
    const session = begun(sheetOf({ timeLimit_s: 10 }));
    dialIt(session, 60_000);
    expect(session.state).toBe("finished");
    expect(session.results).toEqual([]);
  });

  test("pauses between tries only, and where its sheet allows it", () => {
    const session = begun(sheetOf());
    session.pause(2000);
    expect(session.state).toBe("paused");
    session.resume(3000);
    session.turnBy(10, 4000, 4000);
    session.pause(5000);
    expect(session.state).toBe("atStation");
    const strict = begun(sheetOf({ pauseAllowed: false }));
    strict.pause(2000);
    expect(strict.state).toBe("atStation");
  });

  test("lets a candidate end a try that has begun", () => {
    const session = begun(sheetOf());
    session.turnBy(10, 2000, 2000);
    session.endTry(3000);
    expect(session.results).toMatchObject([{ opened: false, isBrokenOff: false }]);
  });

  test("goes on where the browser keeps nothing", () => {
    const shelf = refusingShelf();
    const session = begun(sheetOf(), shelf);
    dialIt(session, 2000);
    expect(session.results).toHaveLength(1);
    expect(shelf.isKeeping).toBe(false);
    expect(shelf.progress).toBeNull();
  });
});

describe("a zeroing try", () => {
  const zeroing = (conditions: { kind: "index-offset" | "lost-motion" | "noise"; size: number }[]) =>
    begun(testSheet({ stations: [zeroingStation({ repetitions: 1, readings: 3, conditions })], sitting: RULES }));

  const readZero = (session: SittingSession, at: number) => {
    const one = session.inHand;
    if (one?.kind !== "zeroing" || one.session.asked === null) return;
    const way = one.session.asked === "left" ? 1 : -1;
    const { seenDeviation } = one.session.lock;
    // Once round in the asked direction, and onto zero.
    session.turnBy(100 * way - seenDeviation, at, at);
    session.takeReading(at + 2000, at + 2000);
  };

  test("ends when zero is set from both directions, with its verdicts", () => {
    const session = zeroing([{ kind: "noise", size: 0 }]);
    for (let k = 0; k < 6; k++) readZero(session, 5000 * (k + 1));
    expect(session.state).toBe("finished");
    expect(session.results).toMatchObject([
      { kind: "zeroing", verdicts: { left: "accept", right: "accept" }, refused: 0, isBrokenOff: false },
    ]);
  });

  test("counts a refused reading, and leaves an open series without a verdict", () => {
    const session = zeroing([{ kind: "lost-motion", size: 0.5 }]);
    session.turnBy(30, 2000, 2000);
    session.takeReading(4000, 4000);
    session.endTry(5000);
    expect(session.results).toMatchObject([{ refused: 1, verdicts: { left: null, right: null } }]);
  });

  test("has the index and the play that its sheet injects, and else what its lock may have", () => {
    const one = zeroing([{ kind: "index-offset", size: -0.3 }]).inHand;
    const condition = one?.kind === "zeroing" ? one.session.lock.condition : null;
    expect(condition?.indexOffset).toBe(-0.3);
    expect(condition?.lostMotion).toBeGreaterThan(0);
  });
});

describe("injected trouble at a dialing station", () => {
  const inHand = (kind: "index-offset" | "lost-motion", size: number) => {
    const one = begun(
      testSheet({ stations: [dialingStation({ conditions: [{ kind, size }] })], sitting: RULES }),
    ).inHand;
    if (one?.kind !== "dialing") throw new Error("no dial is in hand");
    return one;
  };

  test("an index that stands off is read, and the lock counts on", () => {
    const one = inHand("index-offset", 0.5);
    one.turnBy(10, 0);
    expect(one.seen).toBe(one.attempt.dial - 0.5);
  });

  test("the lock follows with lost motion after a change of direction", () => {
    const one = inHand("lost-motion", 1);
    one.turnBy(10, 0);
    one.turnBy(-0.5, 100);
    expect(one.attempt.dial - one.dial).toBe(0.5);
    one.turnBy(-5, 200);
    expect(one.attempt.dial - one.dial).toBe(1);
  });
});

describe("a sitting with a job", () => {
  const sheet = sheetOf({ questions: undefined }, { stations: [troubleStation({ repetitions: 2 })] });

  /** Uses a gauge, as the job's own screen does. */
  const look = (session: SittingSession, now: number) => {
    const one = session.inHand;
    if (one?.kind !== "trouble") throw new Error("no trouble is in hand");
    one.session.pull("left", now);
    session.noteWork(now, now);
  };

  test("begins the try with the first thing done, and takes it in once it is ended", () => {
    const session = begun(sheet);
    expect(session.memory.isTryBegun).toBe(false);
    look(session, 2000);
    expect(session.memory.isTryBegun).toBe(true);
    look(session, 5000);
    session.endTry(6000);
    session.noteWork(7000, 7000);
    expect(session.results).toMatchObject([{ kind: "trouble", named: null, measurements: 2, time_ms: 3000 }]);
    session.takeNext();
    expect(session.inHand?.isBegun).toBe(false);
  });

  test("has no pause in mid-job, and loses it to a reload: what was finished is kept", () => {
    const shelf = memoryShelf();
    const session = begun(sheet, shelf);
    look(session, 2000);
    session.pause(3000);
    expect(session.state).toBe("atStation");
    session.endTry(4000);
    session.takeNext();
    look(session, 5000);
    const again = reloaded(shelf);
    expect(again.results.map(({ isBrokenOff }) => isBrokenOff)).toEqual([false, true]);
    expect(again.results[1]).toMatchObject({ kind: "trouble", condition: null });
  });

  test("gives the same job after a reload that came before it was begun", () => {
    const shelf = memoryShelf();
    const taskOf = ({ inHand }: SittingSession) => (inHand?.kind === "trouble" ? inHand.session.task : null);
    const before = taskOf(begun(sheet, shelf));
    const again = reloaded(shelf);
    again.resume(5000);
    expect(before).not.toBeNull();
    expect(taskOf(again)).toEqual(before);
  });
});
