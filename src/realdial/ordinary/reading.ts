import type { Similarity } from "./camera/similarity";

/** Why a reading is not sure, or there is none. */
export type SightReason =
  /** Nothing around the dial is recognized: it is dark, covered, or the camera was turned away. */
  | "surroundings-lost"
  /** Too much of the ring is covered, or too dark. */
  | "dial-covered"
  /** The dial turns too fast for the camera's exposure. */
  | "too-fast"
  /** Two places fit what is seen about as well, or one is not seen exactly. */
  | "ambiguous"
  /** The dial is not where it can have come in the time. */
  | "jumped";

/** What one picture of an ordinary dial says. */
export interface OrdinaryReading {
  /** Capture time, ms. */
  readonly at: number;
  /** Graduations from where set-up began, unwrapped, left positive; null without sight. */
  readonly position: number | null;
  readonly sight: "sure" | "not-sure" | "no-sight";
  readonly reason: SightReason | null;
  /** Whether the dial may have made a whole turn more or less than the position says: ask for a known number. */
  readonly turnsInDoubt: boolean;
  /** Whether it has rested, for sure, for three pictures. */
  readonly isStopped: boolean;
  /** How the camera has moved since set-up. */
  readonly motion: Similarity;
}
