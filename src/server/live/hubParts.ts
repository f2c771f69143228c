import type { BoardEvent, GrowingAttempt } from "../../school/wire/liveWire";
import type { LiveRoom } from "./liveRoom";

/** A board that listens. */
export type Board = (event: BoardEvent, change: number) => void;

/** What a bench that is connected here is told. */
export interface BenchCalls {
  /** Its hand was lowered. */
  readonly onLowered: () => void;
  /** It has connected anew, and this connection is done. */
  readonly onReplaced: () => void;
}

/** A bench that is connected here: what is told to it, and its attempt that grows. */
export interface Connected {
  readonly on: BenchCalls;
  attempt: GrowingAttempt | null;
}

/** A class as one server knows it. */
export interface Room {
  readonly schoolId: string;
  readonly classId: string;
  readonly room: LiveRoom;
  readonly boards: Map<Board, number>;
  /** The last change that the other servers were told of. */
  told: number;
}
