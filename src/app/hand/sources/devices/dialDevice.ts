import type { ComponentType } from "react";
import type { Milliseconds } from "../../../../lock/dial";
import type { NotLearned } from "../../../../realdial/knobs/learned";
import type { DialDoubt } from "../../../../realdial/sources/dialDoubt";
import type { SourceKind } from "../../../../realdial/sources/sourceKinds";
import type { Problem } from "../../../../wording/problem";

/** Where the dial on the screen is. */
export interface ShownPlace {
  /** As the device would tell it, turns, left positive. */
  readonly turns: number;
  /** The number that it shows, graduations. */
  readonly number: number;
  /** Graduations in one turn. */
  readonly perTurn: number;
  /** Whether the record of what is done with it is made of every move. */
  readonly keepsMoves: boolean;
}

/** What an open device tells. Turns are unwrapped, left positive. */
export interface DeviceLink {
  /** It turns the dial from here on. @param step - the smallest step that it can tell, turns */
  readonly ready: (step: number) => void;
  /** How far its readings scatter at rest, turns, standard deviation. */
  readonly measured: (noise: number) => void;
  readonly turned: (turns: number, at: Milliseconds) => void;
  /** Its button was pressed: the reading is to be taken. */
  readonly pressed: (at: Milliseconds) => void;
  /** It is open, but something keeps it from turning the dial; null once that is over. */
  readonly held: (why: Problem | null) => void;
  /** The dial may not be where the knob is: it has to be said, once. The attempt under way is marked. */
  readonly doubted: (why: Problem) => void;
  /** The attempt under way is marked; what is to be said comes with what else is told. */
  readonly marked: (why: DialDoubt) => void;
  /** Something worth knowing that changes nothing. */
  readonly remarked: (what: Problem) => void;
  /** Where the dial on the screen is; null where there is none. */
  readonly shown: () => ShownPlace | null;
  /** It is gone, and will tell nothing more. */
  readonly lost: (why: Problem) => void;
}

/** Learns a knob by one whole turn left and one right. */
export interface KnobLearner {
  /** Whether it has been learned, now or before. */
  readonly isLearned: boolean;
  /** From here on it is turned this way. */
  readonly begin: (turn: "left" | "right") => void;
  /** Both turns are made. @returns why nothing was learned, or null */
  readonly finish: () => NotLearned | null;
}

/** A device that is open. */
export interface OpenDevice {
  readonly close: () => void;
  /** Which one of its kind it is, where its direction is remembered for that one. */
  readonly which?: string | undefined;
  /** Whether it has not come so far yet that it turns the dial: then it is closed with the panel. */
  readonly isInSetup?: () => boolean;
  /** Of a device that sees a number: it has to come to the one on the screen before it turns that dial again. */
  readonly comeApart?: () => void;
  /** Whether motions of it may be kept; they may where left out. */
  readonly keepsMotion?: boolean;
  /** Of a knob whose steps have to be learned. */
  readonly learner?: KnobLearner;
}

/** What the setup of a device is given. */
export interface DeviceSetupProps {
  /** Connects it anew, by what was chosen. */
  readonly onAgain: () => void;
  /** Whether its numbers go down as it is turned left. */
  readonly isReversed: boolean;
}

/** A kind of device that a hand can turn. */
export interface DialDevice {
  readonly kind: SourceKind;
  readonly title: string;
  /** What it is good for, a sentence or two. */
  readonly about: string;
  /** Why this browser cannot use it, or null. */
  readonly unsupported: () => Problem | null;
  /** What a person may choose before it is connected. */
  readonly Before?: ComponentType;
  /** What a person sees of it while it is set up. */
  readonly Setup?: ComponentType<DeviceSetupProps>;
  /** Whether each connection is a setup, so that it is made where the setup is seen and nowhere else. */
  readonly isSetUpEachTime?: boolean;
  /** What is said of it while it is open and does not turn the dial yet; that it is to answer, where left out. */
  readonly waiting?: string;
  /**
   * Listens for the return of one that was lost.
   *
   * @param back - told how to open it then, without a click
   * @returns listens no more
   */
  readonly whenBack?: (back: (open: DialDevice["open"]) => void) => () => void;
  /** Opens it; called while a click is handled, as browsers ask. @throws {DeviceError} */
  readonly open: (link: DeviceLink) => Promise<OpenDevice>;
}
