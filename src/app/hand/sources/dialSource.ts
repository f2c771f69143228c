import type { ComponentType } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { SourceDescription } from "../../../realdial/sources/sourceDescription";

/**
 * A move of the dial: graduations, left positive, at a time of the page's steady clock. What made it goes along, for the
 * record; left out by the hands on the screen.
 */
export type TurnDial = (by: Graduations, at: Milliseconds, source?: SourceDescription) => void;

/** What a source may know of the dial that it turns. */
export interface TurnedDial {
  /** What is drawn of it; it takes the focus. */
  readonly element: HTMLElement;
  /** Graduations in one turn. */
  readonly perTurn: number;
  /** Where it stands now, unwrapped. */
  readonly position: () => Graduations;
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
  readonly start?: (dial: TurnedDial, turn: TurnDial) => () => void;
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
