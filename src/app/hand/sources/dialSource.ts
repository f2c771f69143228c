import type { ComponentType } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { DialDoubt } from "../../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../../realdial/sources/sourceDescription";

/**
 * A move of the dial: graduations, left positive, at a time of the page's steady clock. What made it goes along, for the
 * record; left out by the hands on the screen.
 */
export type TurnDial = (by: Graduations, at: Milliseconds, source?: SourceDescription) => void;

/** Something to do at a dial beside turning it, as far as a device does it too. */
export interface DialAct {
  /** As the keyboard names it, in lower case. */
  readonly key: string;
  readonly act: () => void;
  /** Whether there is nothing to do now. */
  readonly isClosed?: boolean | undefined;
  /** Of what records a stop: where a rest may do it. */
  readonly atRest?: StopAtRest | undefined;
}

/** Where a dial that comes to rest may have its stop recorded. */
export interface StopAtRest {
  /** Whether the dial is there now. */
  readonly isNear: () => boolean;
  /** What a hand with a dial of its own must know of how a stop is judged, in sentences. */
  readonly says: string;
}

/** A dial as it was drawn last. */
export interface DrawnDial {
  /** Where it stands, unwrapped. */
  readonly position: Graduations;
  /** What it reads at the index that is drawn, unwrapped. */
  readonly seen: Graduations;
  readonly acts: readonly DialAct[];
  /** Whether what is shown is long past. */
  readonly isReplay: boolean;
  /** Whether its record is made of every move: then nothing turns it of which no motion is kept. */
  readonly keepsMoves?: boolean | undefined;
  /** The turns may be miscounted from here on. Returns whether the attempt under way is marked by it. */
  readonly onDoubt: (why: DialDoubt) => boolean;
}

/** What a source may know of the dial that it turns. */
export interface TurnedDial {
  /** What is drawn of it; it takes the focus. */
  readonly element: HTMLElement;
  /** Graduations in one turn. */
  readonly perTurn: number;
  /** Where it stands now, unwrapped. */
  readonly position: () => Graduations;
}

/** What a device may know of it too. */
export interface WatchedDial extends TurnedDial {
  readonly drawn: () => DrawnDial;
  /** How often the hands on the screen have moved it. */
  readonly screenMoves: () => number;
}

/** Something drawn below the dial to work a source with. */
export interface SourceControlsProps {
  readonly perTurn: number;
  readonly turn: TurnDial;
}

/**
 * A way to turn a dial: a hand on the screen, keys, a device. Nothing behind it minds where a move came from; records alone name it.
 *
 * A source listens to what it needs, draws what it needs, or both.
 */
export interface DialSource {
  readonly name: string;
  /** What it does, a sentence each, for whoever hears it and for whoever looks it up. */
  readonly help: readonly string[];
  /** Begins to turn the dial. @returns how it ends */
  readonly start?: (dial: WatchedDial, turn: TurnDial) => () => void;
  readonly Controls?: ComponentType<SourceControlsProps>;
}

/** Listens to events of an element. @returns how it ends */
export function listen(element: HTMLElement, listeners: Listeners): () => void {
  const ending = new AbortController();
  // Not passive: a source may keep the page from scrolling along.
  const options = { signal: ending.signal, passive: false };
  for (const [type, listener] of Object.entries(listeners)) {
    element.addEventListener(type, listener as EventListener, options);
  }
  return () => ending.abort();
}

type Listeners = { readonly [Type in keyof HTMLElementEventMap]?: (event: HTMLElementEventMap[Type]) => void };
