import type { HandoverEvent } from "../../src/handover/run/rules/handoverEvent";

const OPENS = { type: "combination.dialed", by: "trainee", opened: true } as const;
const SPUN_OFF = { type: "lock.spunOff" } as const;

const lockSteps = (kind: "wheel-pack" | "dial-encoder"): HandoverEvent[] =>
  kind === "wheel-pack"
    ? []
    : [
        { type: "zero.set", side: "right" },
        { type: "zero.set", side: "left" },
      ];

/** A clean handover, step by step. */
export const cleanSteps = (kind: "wheel-pack" | "dial-encoder"): HandoverEvent[] => [
  { type: "mounting.measured", height_in: 44 },
  { type: "ring.aligned" },
  ...lockSteps(kind),
  OPENS,
  { type: "combination.changed", outcome: "true", isAllowed: true },
  OPENS,
  OPENS,
  OPENS,
  { type: "combination.dialed", by: "second", opened: true },
  { type: "holdback.set" },
  { type: "holdback.released" },
  { type: "wayOut.checked", isFree: true },
  { type: "observer.entered", canOpen: true },
  SPUN_OFF,
  { type: "door.shut" },
  OPENS,
  { type: "door.opened", by: "outside" },
  { type: "observer.left" },
  SPUN_OFF,
  { type: "record.written" },
  { type: "duty.signed" },
];

/** A door whose lock is in its tray. */
export const DOOR_TO_FIT = { slotAt: 40, bend: { x_mm: 0, y_mm: 0 } } as const;

/** The word that a lock is fitted, with nothing told of how but that there is a strike. */
export const fitted = (isFaultless: boolean, isChecked = true): HandoverEvent => ({
  type: "lock.fitted",
  acts: [{ type: "strike.hung", above_mm: 0 }],
  checks: [],
  isFaultless,
  isChecked,
});

/** Every event of a handover, with every payload that makes a difference. */
export const EVENTS: readonly HandoverEvent[] = [
  fitted(true),
  fitted(false),
  fitted(true, false),
  { type: "lock.takenApart" },
  { type: "parts.replaced", slotAt: 20 },
  { type: "mounting.measured", height_in: 44 },
  { type: "mounting.measured", height_in: 50 },
  { type: "authorization.asked" },
  { type: "ring.aligned" },
  { type: "ring.loosened" },
  { type: "zero.set", side: "right" },
  { type: "zero.set", side: "left" },
  OPENS,
  { type: "combination.dialed", by: "trainee", opened: false },
  { type: "combination.dialed", by: "second", opened: true },
  { type: "combination.dialed", by: "second", opened: false },
  { type: "combination.changed", outcome: "true", isAllowed: true },
  { type: "combination.changed", outcome: "true", isAllowed: false },
  { type: "combination.changed", outcome: "off", isAllowed: true },
  { type: "combination.changed", outcome: "spoiled", isAllowed: true },
  { type: "pack.rebuilt" },
  { type: "bolt.thrown" },
  { type: "bolt.drawnAgain" },
  SPUN_OFF,
  { type: "holdback.set" },
  { type: "holdback.released" },
  { type: "observer.entered", canOpen: true },
  { type: "observer.entered", canOpen: false },
  { type: "observer.left" },
  { type: "wayOut.checked", isFree: true },
  { type: "wayOut.checked", isFree: false },
  { type: "wayOut.cleared" },
  { type: "release.failed" },
  { type: "door.shut" },
  { type: "door.opened", by: "outside" },
  { type: "door.opened", by: "inside" },
  { type: "door.opened", by: "emergency" },
  { type: "record.written" },
  { type: "record.refused" },
  { type: "duty.signed" },
];

/** The events of a type, with every payload. */
export const eventsOf = (...types: HandoverEvent["type"][]) => EVENTS.filter(({ type }) => types.includes(type));
