import type { KeyboardEvent } from "react";
import type { StopAtRest } from "./sources/dialSource";
import type { DigitsNow } from "./useDigits";

/** One thing to do beside turning the dial: its key while the dial has the focus, and its button. */
export interface HandAct {
  /** As the keyboard names it, in lower case. */
  readonly key: string;
  readonly label: string;
  /** What the key does, for a sentence that begins with it: "starts again". */
  readonly does: string;
  readonly act: () => void;
  /** Where its button is: in a corner of the dial, below it, or where the screen puts it. */
  readonly place: "left" | "right" | "top" | "below" | "elsewhere";
  /** Whether there is nothing to do now. */
  readonly isClosed?: boolean;
  readonly hint?: string;
  /** Of what records a stop: where a rest may do it, for a dial in the hand. */
  readonly atRest?: StopAtRest;
}

/** What begins again with the same lock. */
export const againAct = (act: () => void, does = "starts again"): HandAct => ({
  key: "r",
  label: "Again",
  does,
  act,
  place: "left",
});

/** What begins anew with something else. */
export const newAct = (label: string, does: string, act: () => void): HandAct => ({
  key: "n",
  label,
  does,
  act,
  place: "right",
});

/** What records where the dial stopped. */
export const stopAct = (act: () => void, isClosed: boolean, atRest?: StopAtRest): HandAct => ({
  key: " ",
  label: "Record this stop",
  does: "records a stop",
  act,
  place: "below",
  isClosed,
  ...(atRest && { atRest }),
});

/** All acts, with the switch for the digits in the hub where there is one. */
export function withDigits(acts: readonly HandAct[], { strength, toggle }: DigitsNow): readonly HandAct[] {
  if (toggle === null) return acts;
  const label = strength === "shown" ? "Hide digits" : "Show digits";
  const hint = "The digital reading in the middle of the dial. It fades as you learn to read the mark at the index.";
  return [{ key: "d", label, does: "shows or hides the digits", act: toggle, place: "top", hint }, ...acts];
}

/** "Space", "R": what is printed on the key. */
export const keyName = ({ key }: HandAct): string => (key === " " ? "Space" : key.toUpperCase());

/** Does what a key stands for. */
export function takeKey(event: KeyboardEvent, acts: readonly HandAct[]): void {
  const act = acts.find(({ key }) => key === event.key.toLowerCase());
  if (act === undefined) return;
  // The page does not scroll, however long the key is down.
  if (event.key === " ") event.preventDefault();
  const isPlain = !(event.ctrlKey || event.metaKey || event.altKey || event.repeat);
  if (isPlain && act.isClosed !== true) act.act();
}
