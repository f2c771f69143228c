import type { DialDoubt } from "../../../../realdial/sources/dialDoubt";
import type { Problem } from "../../../../wording/problem";

const DOUBTS: Readonly<Record<string, DialDoubt>> = {
  "sight-lost": "sight-lost",
  gap: "gap",
  missed: "steps-missed",
  leapt: "steps-missed",
  restarted: "restarted",
  hidden: "hidden",
  "camera-hidden": "hidden",
};

/** What a record says of what went wrong with a device: that it was gone, of all that has no name of its own. */
export const doubtOf = ({ code }: Problem): DialDoubt => DOUBTS[code] ?? "disconnected";
