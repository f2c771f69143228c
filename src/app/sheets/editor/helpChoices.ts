import type { Help } from "../../../dialing/advice";
import type { Station } from "../../../drill/sheet/sheet";

type Choices = readonly (readonly [Help, string])[];

const DIALED: Choices = [
  ["full", "Full: what to do and how far to turn"],
  ["counts", "Counts: arrivals only"],
  ["silent", "Silent: nothing until the end"],
];

const OTHERS: Partial<Record<Station["kind"], Choices>> = {
  fitting: [
    ["full", "Full: gauges with their limits"],
    ["counts", "Counts: gauges without limits"],
    ["silent", "Silent: no gauges"],
  ],
  service: [
    ["full", "Full: what is left to inspect"],
    ["counts", "Counts: how much is left to inspect"],
    ["silent", "Silent: nothing until the end"],
  ],
  inspection: [
    ["full", "Full: a good fit and its limits"],
    ["counts", "Counts: checks made, and a good fit"],
    ["silent", "Silent: the checks alone"],
  ],
};

/** How much help a kind of station can give, and what that is there. */
export const helpChoices = (kind: Station["kind"]): Choices => OTHERS[kind] ?? DIALED;
