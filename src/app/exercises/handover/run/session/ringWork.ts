import { RUN_WORDS } from "../../../../../handover/run/rules/runWords";
import type { Milliseconds, Turn } from "../../../../../lock/dial";
import { wordsOf } from "../../../../../wording/problem";
import { alignRing, learnedBy, readSide, TRUE_RING } from "./doorZeroing";
import type { HandoverSession } from "./handoverSession";

/** Goes to ring and zero, or lets a simulated hand align the ring. */
export function workOnRing(session: HandoverSession, now: Milliseconds): void {
  if (!session.setup.isHandsOff && session.run.situation.fit !== "apart") {
    // What the dial did at the door belongs to no approach.
    session.zeroing.takeHold();
    session.show("ring");
    return;
  }
  if (session.run.hindrance({ type: "ring.aligned" }) === undefined) alignRing(session.zeroing);
  session.act({ type: "ring.aligned" }, now);
}

/** Loosens the ring; what the lock has learned is lost. */
export function loosenRing(session: HandoverSession, now: Milliseconds): void {
  if (session.run.hindrance({ type: "ring.loosened" }) === undefined) session.zeroing.loosenRing();
  session.lock.learn(learnedBy(session.zeroing));
  session.act({ type: "ring.loosened" }, now);
}

/** A simulated hand sets the zero from a side; the lock takes the sides in their order. */
export function setZero(session: HandoverSession, side: Turn, now: Milliseconds): void {
  const { zeroing, lock, run } = session;
  const event = { type: "zero.set", side } as const;
  const isNext = zeroing.asked === side && run.hindrance(event) === undefined;
  if (run.situation.ring === "aligned" && zeroing.asked !== null && zeroing.asked !== side) {
    session.refuse(`Set the zero turning ${zeroing.asked} first.`);
    return;
  }
  if (isNext) {
    readSide(zeroing);
    lock.learn(learnedBy(zeroing));
  }
  session.act(event, now);
}

/** Takes a reading of the zero by hand, or tells why the lock takes none. */
export function takeZeroReading(session: HandoverSession, now: Milliseconds): void {
  const { zeroing, run } = session;
  if (zeroing.asked === null) return;
  const hindrance = run.hindrance({ type: "zero.set", side: zeroing.asked });
  if (hindrance === undefined) zeroing.takeReading(now);
  else session.refuse(wordsOf(hindrance, RUN_WORDS));
}

/** Looks whether ring and zero have come further by hand, and takes what happened. */
export function watchZeroing(session: HandoverSession, now: Milliseconds): void {
  const { state, lock } = session.zeroing;
  const { ring } = session.run.situation;
  if (state === "ringLoose" && ring === "aligned") session.act({ type: "ring.loosened" }, now);
  if (state !== "ringLoose" && ring === "loose" && Math.abs(lock.indexError) <= TRUE_RING) {
    session.act({ type: "ring.aligned" }, now);
  }
  if (session.setup.profile.kind === "dial-encoder") watchSides(session, now);
}

function watchSides(session: HandoverSession, now: Milliseconds): void {
  const { state, setup } = session.zeroing;
  const [first, second] = setup.rules.order;
  const isFirstDone = state === "secondSeries" || state === "zeroSet";
  if (isFirstDone && session.run.situation.zero === "notSet") session.act({ type: "zero.set", side: first }, now);
  if (state === "zeroSet" && session.run.situation.zero !== "bothSet")
    session.act({ type: "zero.set", side: second }, now);
}
