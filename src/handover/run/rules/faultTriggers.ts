import { all, any, type Condition, not } from "./condition";
import { IS_LOCKED_OUT, IS_PROVED, IS_SHUT_IN, READS_TRUE } from "./conditions";
import type { Given, HandoverEvent } from "./handoverEvent";
import { IS_COMPLETE, IS_READY_FOR_RECORD } from "./proofs";

/** An event, and the situation before it, that together are a fault. */
export interface FaultTrigger {
  readonly code: string;
  readonly on: readonly HandoverEvent["type"][];
  readonly given?: Given;
  readonly when: Condition;
}

const always = all();
const hasOwn = not("combination.shipped");

/** Faults of an act: made when the event comes while the condition holds. The order is that of telling them. */
export const FAULT_TRIGGERS = [
  { code: "fit-unchecked", on: ["lock.fitted"], given: { isChecked: false }, when: always },
  { code: "taken-apart", on: ["lock.takenApart"], when: "ring.aligned" },
  { code: "parts-spoiled", on: ["parts.replaced"], when: always },
  { code: "aligned-unmeasured", on: ["ring.aligned"], when: any("mounting.unchecked", "mounting.outOfRange") },
  { code: "zeroed-on-loose-ring", on: ["zero.set"], when: "ring.loose" },
  {
    code: "ring-moved",
    on: ["ring.loosened"],
    when: any("zero.rightSet", "zero.leftSet", "zero.bothSet", "shippedTry.tried", not("proofs.none")),
  },
  { code: "dialed-untrue", on: ["combination.dialed"], when: not(READS_TRUE) },
  { code: "proved-held-back", on: ["combination.dialed"], when: "holdback.on" },
  { code: "changed-untrue", on: ["combination.changed"], when: not(READS_TRUE) },
  { code: "changed-untried", on: ["combination.changed"], when: all("combination.shipped", "shippedTry.untried") },
  { code: "rules-broken", on: ["combination.changed"], given: { isAllowed: false }, when: always },
  { code: "set-off", on: ["combination.changed"], given: { outcome: "off" }, when: always },
  { code: "pack-spoiled", on: ["combination.changed"], given: { outcome: "spoiled" }, when: always },
  {
    code: "second-too-early",
    on: ["combination.dialed"],
    given: { by: "second" },
    when: all("door.open", hasOwn, not("proofs.thrice")),
  },
  { code: "held-back-turned", on: ["lock.spunOff", "bolt.thrown"], when: "holdback.on" },
  { code: "shut-unproved", on: ["door.shut"], when: not(IS_PROVED) },
  {
    code: "shut-without-second",
    on: ["door.shut"],
    when: all(hasOwn, "proofs.thrice", "second.unproved"),
  },
  { code: "shut-unobserved", on: ["door.shut"], when: all("outside.unproved", not("inside.able")) },
  { code: "shut-not-spun-off", on: ["door.shut"], when: all("holdback.off", not("bolt.spunOff")) },
  { code: "shut-held-back", on: ["door.shut"], when: "holdback.on" },
  { code: "proved-not-spun-off", on: ["combination.dialed"], when: all("door.shut", not("bolt.spunOff")) },
  { code: "opened-by-force", on: ["door.opened"], given: { by: "emergency" }, when: always },
  { code: "recorded-early", on: ["record.written"], when: not(IS_READY_FOR_RECORD) },
  { code: "combination-in-record", on: ["record.refused"], when: always },
  { code: "shipped-left", on: ["duty.signed"], when: "combination.shipped" },
  { code: "holdback-left-on", on: ["duty.signed"], when: "holdback.on" },
  { code: "someone-left-inside", on: ["duty.signed"], when: not("inside.nobody") },
  { code: "signed-too-early", on: ["duty.signed"], when: not(IS_COMPLETE) },
] as const satisfies readonly FaultTrigger[];

/** Faults of a situation: made whenever it comes about, whatever led to it. */
export const FAULT_SITUATIONS = {
  "shut-in": IS_SHUT_IN,
  "locked-out": IS_LOCKED_OUT,
} as const satisfies Readonly<Record<string, Condition>>;

/** A fault of the signature that hands a door over, with every proof: made where this holds then. */
export const FAULT_AT_END = { code: "bad-fit-left", when: "fit.faulty" } as const;

/** Names of the faults of a handover. */
export type HandoverFault =
  | (typeof FAULT_TRIGGERS)[number]["code"]
  | keyof typeof FAULT_SITUATIONS
  | (typeof FAULT_AT_END)["code"];
