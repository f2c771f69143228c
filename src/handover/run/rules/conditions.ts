import { all, any, type Condition, not } from "./condition";

/** The door is shut and the bolt holds it. */
export const IS_LATCHED: Condition = all("door.shut", not("bolt.retracted"));

/** The index stands true and the lock knows its zero from both sides. */
export const READS_TRUE: Condition = all("ring.aligned", any("zero.bothSet", "zero.byRing"));

/** The numbers as written do not open the lock: the lock itself says so, or else what was done to it. */
export const IS_USELESS: Condition = any(
  "asWritten.useless",
  all("asWritten.unknown", any("combination.ownOff", "combination.spoiled", not(READS_TRUE))),
);

/** What is set has been shown to open: the shipped combination once, one's own three times. */
export const IS_PROVED: Condition = any(all("combination.shipped", "shippedTry.tried"), "proofs.thrice");

/** Somebody is behind a door that holds, and was not shown a way out that has been seen to work. */
export const IS_SHUT_IN: Condition = all(IS_LATCHED, any("inside.unable", all("inside.able", not("wayOut.free"))));

/** The door holds, the numbers do not open it, and nobody inside can. */
export const IS_LOCKED_OUT: Condition = all(IS_LATCHED, IS_USELESS, not(all("inside.able", not("wayOut.blocked"))));

/** An opening that shows something: by dialing, on a lock that reads true, with the door open and nothing held back. */
export const SHOWS: Condition = all("door.open", "holdback.off", READS_TRUE);

/** The lock is together and on its door. */
export const IS_ON_DOOR: Condition = not("fit.apart");

/** A fitted lock can be taken apart. */
export const CAN_TAKE_APART: Condition = all("door.open", "holdback.off", any("fit.faultless", "fit.faulty"));

/** The combination can be changed. */
export const CAN_CHANGE: Condition = all(IS_ON_DOOR, "door.open", not("combination.spoiled"));
