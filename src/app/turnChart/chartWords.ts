import { FAULT_NAMES } from "../../dialing/faultName";
import type { WordedFault } from "../../dialing/faultWords";
import { capital, faceText, readingText } from "../../dialing/words";
import type { Combination } from "../../lock/combination";
import { type Graduations, reading, type Turn } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import { signedText } from "../shell/signedText";
import type { ChartEvent, Stretch } from "./chartEvents";

/** What the words are about. */
export interface Lock {
  readonly profile: Profile;
  readonly combination: Combination;
}

/** "3.21 turns". */
function turnsText(turns: number): string {
  return `${Math.max(0, turns).toFixed(2)} turns`;
}

/** "12.4", seconds. */
export function secondsText(time_ms: number): string {
  return (time_ms / 1000).toFixed(1);
}

/** The faults at one place, short: the first two by name. */
function faultNames(faults: readonly WordedFault[]): string {
  const names = [...new Set(faults.map(({ code }) => FAULT_NAMES[code]))];
  return names.length <= 2 ? names.join(", ") : `${names.slice(0, 2).join(", ")}, +${names.length - 2}`;
}

/** What is written beside an event on the chart; empty for one that its sign alone tells of. */
export function eventLabel({ kind, error, faults }: ChartEvent): string {
  if (kind === "open") return "open";
  return [error === null ? "" : signedText(error), faultNames(faults)].filter((part) => part !== "").join(" ");
}

/** A position as the dial shows it, to a tenth. */
export function positionText(position: Graduations, { profile }: Lock): string {
  return readingText(reading(position, profile.graduations), profile);
}

const numberText = ({ profile, combination }: Lock, step: number) => faceText(combination[step] ?? 0, profile);

const arrivalName = (event: ChartEvent, lock: Lock) => {
  const step = lock.profile.procedure[event.step];
  const wanted = `${step?.arrivals ?? 0}${step?.rule === "at-least" ? " or more" : ""}`;
  return `Arrival ${event.arrivals} of ${wanted} at ${numberText(lock, event.step)}`;
};

const EVENT_NAMES: Readonly<Record<ChartEvent["kind"], (event: ChartEvent, lock: Lock) => string>> = {
  arrival: arrivalName,
  stop: (event, lock) =>
    `Stop at ${positionText(event.position, lock)}, ${signedText(event.error ?? 0)} from ${numberText(lock, event.step)}`,
  open: (event, lock) => `Bolt back at ${positionText(event.position, lock)}`,
  fault: (event) => sentenceCase(faultNames(event.faults)),
};

const sentenceCase = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** An event in a few words. */
export function eventName(event: ChartEvent, lock: Lock): string {
  return EVENT_NAMES[event.kind](event, lock);
}

/** What there is to add to an event's name: the first sentence of each fault, or else where it lies. */
export function eventDetail({ faults, turn, turns }: ChartEvent): string {
  const [said] = faults;
  if (said === undefined) return `turning ${turn}, ${turnsText(turns)} in`;
  const more = faults.length > 1 ? ` And ${faultNames(faults.slice(1))}.` : "";
  return `${said.message.split(/(?<=\.) /)[0] ?? ""}${more}`;
}

/** What a stretch of the chart is for: "L 33", "R draw". */
export function stretchLabel({ turn, step }: Stretch, lock: Lock): string {
  const letter = capital(turn).charAt(0);
  if (step === null) return letter;
  return `${letter} ${step < lock.profile.procedure.length ? numberText(lock, step) : "draw"}`;
}

/** A point of the path in words: what it reads, which way it goes, how far in it is. */
export function pointText(position: Graduations, turn: Turn, turns: number, lock: Lock): string {
  return `Reading ${positionText(position, lock)}, turning ${turn}, ${turnsText(turns)} in`;
}

/** What the next stop of the path came to: "its stop is +0.4 from 33"; empty where there is none. */
export function stopText(stop: ChartEvent | undefined, lock: Lock): string {
  if (stop === undefined) return "";
  return `stop ${signedText(stop.error ?? 0)} from ${numberText(lock, stop.step)}`;
}
