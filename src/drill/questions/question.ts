/** What knowledge questions are about, in the order of the work. */
export const TOPICS = [
  "turn-counting",
  "wheel-pack",
  "zeroing",
  "choosing-combinations",
  "proving",
  "egress",
  "records",
  "changing",
  "trouble",
  "handover",
] as const;

/** One of the topics. */
export type Topic = (typeof TOPICS)[number];

/** A knowledge question with one right answer. */
export interface Question {
  readonly id: string;
  readonly topic: Topic;
  readonly asks: string;
  /** From three to five. */
  readonly choices: readonly string[];
  /** Index of the right choice. */
  readonly answer: number;
  /** Why it is right, told after marking. */
  readonly explanation: string;
  /** Where the answer is from, or that it has no source. */
  readonly source: string;
  /** Whether the source was read itself, is recalled, or there is none. */
  readonly sourceStatus: "SEEN" | "RECOMPUTED" | "MEMORY" | "none";
}
