import { all, not } from "../rules/condition";
import { IS_LATCHED } from "../rules/conditions";
import type { HandoverEvent } from "../rules/handoverEvent";
import { isInRange } from "../rules/mountingHeight";
import { ifGiven, when } from "./chartGuards";
import { handover } from "./handoverSetup";

const measured = [
  {
    guard: ({ event }: { readonly event: HandoverEvent }) =>
      event.type === "mounting.measured" && isInRange(event.height_in),
    target: "inRange",
  },
  { target: "outOfRange" },
] as const;

/** The height of the dial, and whether it may be so. */
export const mounting = handover.createStateConfig({
  initial: "unchecked",
  states: {
    unchecked: { on: { "mounting.measured": measured } },
    inRange: {},
    outOfRange: { on: { "authorization.asked": "authorized" } },
    authorized: {},
  },
});

const leaves = { "observer.left": { guard: when("door.open"), target: "nobody" } } as const;

/** Who is inside. */
export const inside = handover.createStateConfig({
  initial: "nobody",
  states: {
    nobody: {
      on: {
        "observer.entered": [
          { guard: ifGiven({ canOpen: true }, "door.open"), target: "able" },
          { guard: ifGiven({ canOpen: false }, "door.open"), target: "unable" },
        ],
      },
    },
    able: { on: leaves },
    unable: { on: leaves },
  },
});

const looked = [
  { guard: ifGiven({ isFree: true }, "door.open"), target: "free" },
  { guard: ifGiven({ isFree: false }, "door.open"), target: "blocked" },
] as const;

/** Whether one gets out from inside. */
export const wayOut = handover.createStateConfig({
  initial: "unchecked",
  states: {
    unchecked: {
      on: {
        "wayOut.checked": looked,
        "release.failed": { guard: when(all(IS_LATCHED, not("inside.nobody"))), target: "blocked" },
      },
    },
    free: { on: { "wayOut.checked": looked } },
    // Cleared is not yet checked.
    blocked: { on: { "wayOut.cleared": { guard: when("door.open"), target: "unchecked" } } },
  },
});
