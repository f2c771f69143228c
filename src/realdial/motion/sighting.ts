/** Why a dial's position is not sure, or not known. */
export type SightReason =
  /** All is well. */
  | "none"
  /** No sheet is found in the picture. */
  | "no-sheet"
  /** The sheet's markers are covered. */
  | "markers-covered"
  /** The picture is too dark, or too faint. */
  | "too-dark"
  /** Too little of the disc is seen. */
  | "disc-covered"
  /** The rings are not where the sheet has them. */
  | "disc-lost"
  /** The disc wobbles by more than can be taken out. */
  | "disc-wobbles"
  /** What is seen fits more than one position. */
  | "ambiguous"
  /** The dial turns faster than the camera can see. */
  | "too-fast"
  /** Of an ordinary dial: nothing around it is recognized. */
  | "surroundings-lost"
  /** Too much of its face is covered. */
  | "dial-covered"
  /** It is not where it can have come in the time. */
  | "jumped";

/** How well a dial is seen. */
export type Sight = "sure" | "not-sure" | "no-sight";

/** What a frame says of a dial. */
export interface Sighting {
  /** Capture time, ms. */
  readonly at: number;
  /** Graduations, unwrapped, left positive; null where none can be given. */
  readonly position: number | null;
  readonly sight: Sight;
  readonly reason: SightReason;
  /** Whether the count of whole turns may be wrong since it was last set. */
  readonly turnsInDoubt: boolean;
}
