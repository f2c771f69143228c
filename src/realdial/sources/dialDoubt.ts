import * as z from "zod/mini";
import { oneOf, shortList } from "../../lock/fieldSchemas";

/** Why the turns that were counted may not be those that a hand made, as records name it: a name once given stays. */
export const DIAL_DOUBTS = [
  /** A camera lost sight of the dial. */
  "sight-lost",
  /** Nothing was heard of the device for a time. */
  "gap",
  /** The device says that steps could not be read. */
  "steps-missed",
  /** The device started anew. */
  "restarted",
  /** The page was in the background, or the machine asleep. */
  "hidden",
  /** The device was unplugged, or its connection failed. */
  "disconnected",
] as const;

/** A reason to doubt the count of turns. */
export type DialDoubt = (typeof DIAL_DOUBTS)[number];

/** A record of a dial that was turned. */
export interface DoubtedRecord {
  readonly doubts?: readonly DialDoubt[] | undefined;
}

/** What makes an attempt's turns doubtful, each reason once; left out where nothing does. */
export const doubtsSchema = z.optional(shortList(oneOf(DIAL_DOUBTS), DIAL_DOUBTS.length));

/** Whether a record's turns are in doubt. */
export const isDoubted = ({ doubts = [] }: DoubtedRecord): boolean => doubts.length > 0;
