/** What knowledge questions are about. */
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
  "fitting",
  "service",
  "instructions",
] as const;

/** One of the topics. */
export type Topic = (typeof TOPICS)[number];

/**
 * How a source was looked at: read itself, read in a copy or report that somebody else made, recomputed, recalled without
 * a look, or none: common practice.
 */
export const SOURCE_STATUSES = ["SEEN", "COPY", "RECOMPUTED", "MEMORY", "none"] as const;

/** One of them. */
export type SourceStatus = (typeof SOURCE_STATUSES)[number];

const SURENESS: Readonly<Record<SourceStatus, string>> = {
  SEEN: "We read it in the source itself.",
  COPY: "We read it in a copy or report of the source.",
  RECOMPUTED: "We recomputed it.",
  MEMORY: "It is from memory: not checked.",
  none: "It is common practice: check it against the written instructions.",
};

/** How sure the answer to a question is, in a sentence. */
export const surenessText = ({ sourceStatus }: Pick<Question, "sourceStatus">): string => SURENESS[sourceStatus];

/** A knowledge question with one right answer. */
export interface Question {
  readonly id: string;
  readonly topic: Topic;
  readonly asks: string;
  /** From three to five. */
  readonly choices: readonly string[];
  /** Index of the right choice. */
  readonly answer: number;
  /** Why it is right, shown after marking. */
  readonly explanation: string;
  /** Where the answer is from, or that it has no source. */
  readonly source: string;
  readonly sourceStatus: SourceStatus;
}
