import type { Problem } from "../../../wording/problem";

/** What keeps records from being sent. */
export type Trouble =
  | { readonly kind: "no-network" | "signed-out" | "no-storage" }
  | { readonly kind: "server"; readonly problem: Problem };

/** What a person is told of the sending. */
export interface SendingState {
  readonly waiting: number;
  readonly refused: number;
  readonly isSending: boolean;
  /** When the server last answered that it has all, milliseconds since 1970; null where it has not yet. */
  readonly sentAt: number | null;
  readonly trouble: Trouble | null;
  /** How far this bench's clock is ahead of the server's, ms; 0 where that is little. */
  readonly clockAhead_ms: number;
}

/** Before anything was looked at. */
export const NOTHING_SENT: SendingState = {
  waiting: 0,
  refused: 0,
  isSending: false,
  sentAt: null,
  trouble: null,
  clockAhead_ms: 0,
};
