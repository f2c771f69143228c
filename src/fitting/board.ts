import type { BoardAct, Hindrance } from "./fittingAct";
import { FITTING } from "./trainingValues";

/** Which way round the battery's leads are. */
export type Leads = "right" | "reversed";

/** The board in the body of an electronic lock, the wires on it, and the strap on the wrist that works on it. */
export interface Board {
  readonly isStrapOn: boolean;
  /** What static has done to it; nothing of it shows on the board. */
  readonly harm: "none" | "unsteady" | "dead";
  /** Whether the encoder's cable is plugged in. */
  readonly hasCable: boolean;
  /** The battery's leads; null while it is not connected. */
  readonly leads: Leads | null;
  readonly isFuseBlown: boolean;
  /** Whether it found its encoder when power last came. It looks only then. */
  readonly foundEncoder: boolean;
  /** How often it was touched without the strap. */
  readonly bareTouches: number;
}

/** A board as it comes: whole, nothing connected. */
export const NEW_BOARD: Board = {
  isStrapOn: false,
  harm: "none",
  hasCable: false,
  leads: null,
  isFuseBlown: false,
  foundEncoder: false,
  bareTouches: 0,
};

const hasPower = ({ leads, isFuseBlown, harm }: Board): boolean => leads === "right" && !isFuseBlown && harm !== "dead";

/** What the training lock's self-check comes to. The signs are its own. */
export type SelfCheck = "passes" | "silent" | "no-encoder" | "unsteady";

/** Runs the self-check: power first, then whether the encoder was found, then whether its reading rests. */
export function selfCheckOf(board: Board): SelfCheck {
  if (!hasPower(board)) return "silent";
  if (!board.foundEncoder || !board.hasCable) return "no-encoder";
  return board.harm === "unsteady" ? "unsteady" : "passes";
}

/** Power comes on, where it does: the board looks for its encoder. Leads the wrong way round blow the fuse. */
function powered(board: Board): Board {
  const isFuseBlown = board.isFuseBlown || board.leads === "reversed";
  return { ...board, isFuseBlown, foundEncoder: board.leads !== null && board.hasCable };
}

/**
 * A board that a hand has touched: without the strap it may be harmed.
 *
 * @param luck - in [0, 1)
 * @param harms - share of such touches that harm, 0 to 1
 */
function touched(board: Board, luck: number, harms: number): Board {
  if (board.isStrapOn) return board;
  const bareTouches = board.bareTouches + 1;
  if (luck >= harms || board.harm === "dead") return { ...board, bareTouches };
  return { ...board, bareTouches, harm: luck < harms / FITTING.deadOneIn ? "dead" : "unsteady" };
}

type Of<Type extends BoardAct["type"]> = Extract<BoardAct, { readonly type: Type }>;
type Acts = { readonly [Type in BoardAct["type"]]: (board: Board, act: Of<Type>) => Board | Hindrance };

const ACTS: Acts = {
  "strap.put": (board) => ({ ...board, isStrapOn: true }),
  "strap.taken": (board) => ({ ...board, isStrapOn: false }),
  "cable.plugged": (board) => (board.hasCable ? "is-there-already" : { ...board, hasCable: true }),
  "cable.pulled": (board) => (board.hasCable ? { ...board, hasCable: false } : "no-cable"),
  "battery.connected": (board, { leads }) => (board.leads === null ? powered({ ...board, leads }) : "is-there-already"),
  "battery.disconnected": (board) => (board.leads === null ? "no-battery" : { ...board, leads: null }),
  "fuse.replaced": (board) => powered({ ...board, isFuseBlown: false }),
  "board.replaced": (board) =>
    board.hasCable || board.leads !== null
      ? "wires-hold-board"
      : { ...NEW_BOARD, isStrapOn: board.isStrapOn, bareTouches: board.bareTouches },
};

/**
 * A board after an act.
 *
 * @param harms - share of touches without the strap that harm, 0 to 1
 * @returns what stood in the way where the act could not be done
 */
export function boardAfter(board: Board, act: BoardAct, harms: number): Board | Hindrance {
  const done = (ACTS[act.type] as (board: Board, act: BoardAct) => Board | Hindrance)(board, act);
  if (typeof done === "string") return done;
  return "luck" in act ? touched(done, act.luck, harms) : done;
}
