import type { Milliseconds } from "../../lock/dial";

/** What comes of the bytes. Turns are those of the encoder since its first hello, unwrapped, positive as line A leads B. */
export type WireEvent =
  /** The board has spoken: from here on its steps count. */
  | { readonly type: "ready"; readonly countsPerTurn: number; readonly at: Milliseconds }
  | { readonly type: "moved"; readonly turns: number; readonly at: Milliseconds }
  /** The button was pressed, at this place. */
  | { readonly type: "pressed"; readonly turns: number; readonly at: Milliseconds }
  /** The board has started anew: what was turned meanwhile is not known. */
  | { readonly type: "restarted"; readonly at: Milliseconds }
  /** So many steps had no direction: the count may be off by twice as many. */
  | { readonly type: "missed"; readonly steps: number; readonly at: Milliseconds }
  /** The count went farther than any hand turns in that time: by so many steps, none of which is taken as turned. */
  | { readonly type: "leapt"; readonly steps: number; readonly at: Milliseconds }
  /** It moved while nothing was heard: where it is, is known; how it came there is not. */
  | { readonly type: "gap"; readonly lasted: Milliseconds; readonly at: Milliseconds }
  /** The board speaks a version that is not known here: it is not followed. */
  | { readonly type: "newer"; readonly version: number };

/** What has come of the lines so far. */
export interface WireTally {
  /** Sound lines. */
  readonly read: number;
  /** Lines with a wrong checksum, or that are none: dropped. */
  readonly bad: number;
  /** Sound lines that came twice, or after a later one: dropped. */
  readonly stale: number;
  /** Lines that never came, by the gaps in their numbers. */
  readonly lost: number;
}
