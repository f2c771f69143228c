import type { CellType } from "./batteries";
import type { Lubricant, Section } from "./papers";
import type { LockKind, LubricatedPlace } from "./servicedLock";
import type { Condition } from "./wrongThing";

/** What the holder of the door can be asked. */
export const QUESTIONS = ["trouble", "work-nearby"] as const;
/** One of them. */
export type Question = (typeof QUESTIONS)[number];

/** Where one can look. */
export const LOOK_PLACES = ["ring", "bolt", "way-out", "case"] as const;
/** Where one looks: ring and dial, the bolt, the handle inside that is the way out, the battery case. */
export type LookPlace = (typeof LOOK_PLACES)[number];

/** What can be measured. */
export const INSTRUMENTS = ["turn-round", "lost-motion", "marks", "key", "battery"] as const;
/** What one measures. */
export type Instrument = (typeof INSTRUMENTS)[number];

/** The places to look at; a wheel pack has no battery case. */
export const looksFor = (kind: LockKind): readonly LookPlace[] =>
  LOOK_PLACES.filter((place) => place !== "case" || kind === "electronic");
/** What is measured on a lock. */
export const instrumentsFor = (kind: LockKind): readonly Instrument[] =>
  INSTRUMENTS.filter((one) => one !== "battery" || kind === "electronic");

/** What a technician writes down at the end. */
export interface VisitRecord {
  /** What was wrong; empty where nothing was. */
  readonly found: readonly Condition[];
  readonly hasFigures: boolean;
  readonly hasChanges: boolean;
  readonly hasProofs: boolean;
  /** Whether the combination is written in it. */
  readonly hasCombination: boolean;
}

/** A record with nothing in it. */
export const EMPTY_RECORD: VisitRecord = {
  found: [],
  hasFigures: false,
  hasChanges: false,
  hasProofs: false,
  hasCombination: false,
};

/** Kinds of change to a lock. */
export const CHANGE_TYPES = [
  "screw.tightened",
  "key.replaced",
  "bearing.replaced",
  "ring.cleaned",
  "paint.removed",
  "bolt.wiped",
  "ring.centered",
  "lubricated",
  "batteries.replaced",
] as const satisfies readonly VisitChange["type"][];

/** What changes something in the lock. */
export type VisitChange =
  | { readonly type: "screw.tightened"; readonly torque_Nm: number }
  | { readonly type: "key.replaced" }
  | { readonly type: "bearing.replaced" }
  | { readonly type: "ring.cleaned" }
  | { readonly type: "paint.removed" }
  | { readonly type: "bolt.wiped" }
  | { readonly type: "ring.centered" }
  | { readonly type: "lubricated"; readonly at: LubricatedPlace; readonly with: Lubricant }
  | { readonly type: "batteries.replaced"; readonly which: "set" | "one"; readonly cells: CellType };

/** What a technician does on a visit, in any order. */
export type VisitAct =
  | VisitChange
  | { readonly type: "asked"; readonly question: Question }
  | { readonly type: "section.read"; readonly section: Section }
  | { readonly type: "record.read" }
  | { readonly type: "door.opened" }
  | { readonly type: "door.held" }
  | { readonly type: "door.shut" }
  | { readonly type: "strap.worn" }
  | { readonly type: "cover.taken" }
  | { readonly type: "cover.put" }
  | { readonly type: "looked"; readonly at: LookPlace }
  | { readonly type: "measured"; readonly with: Instrument }
  | { readonly type: "tried" }
  | { readonly type: "record.written"; readonly record: VisitRecord };

/** Why an act cannot be done: what stands in the way, not what is wise. */
export type VisitHindrance = "door-is-shut" | "cover-in-the-way" | "is-so-already" | "no-such-part";

/** The section that decides an act; null for what no section says anything about. */
export const SECTION_FOR: Readonly<Record<VisitChange["type"] | "cover.taken", Section>> = {
  "cover.taken": "safety",
  "screw.tightened": "limits",
  "key.replaced": "limits",
  "ring.centered": "limits",
  "bearing.replaced": "lubrication",
  "ring.cleaned": "lubrication",
  "paint.removed": "lubrication",
  "bolt.wiped": "lubrication",
  lubricated: "lubrication",
  "batteries.replaced": "batteries",
};

/** Whether an act changes something in the lock. */
export const isChange = (act: VisitAct): act is VisitChange => CHANGE_TYPES.some((type) => type === act.type);
