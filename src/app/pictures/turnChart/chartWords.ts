import { FAULT_NAMES } from "../../../dialing/faultName";
import type { WordedFault } from "../../../dialing/faultWords";
import { capital, faceText, readingText } from "../../../dialing/words";
import type { Combination } from "../../../lock/combination";
import { type Graduations, reading, type Turn } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { signedText } from "../../parts/signedText";
import type { ChartEvent, Stretch } from "./chartEvents";

/** What the words are about. */
export interface Lock {
  readonly profile: Profile;
  readonly combination: Combination;
}

/** "after 3.21 turns". */
function turnsText(turns: number): string {
  return `after ${Math.max(0, turns).toFixed(2)} turns`;
}

/** The faults at one place, short: the first two by name. */
function faultNames(faults: readonly WordedFault[]): string {
  const names = [...new Set(faults.map(({ code }) => FAULT_NAMES[code]))];
  return names.length <= 2 ? names.join(", ") : `${names.slice(0, 2).join(", ")}, +${names.length - 2}`;
}

/**
 * What is written beside an event on the chart; empty for one that its sign alone tells of.
 *
 * @param hasFigures - whether sizes may be shown
 */
export function eventLabel({ kind, error, faults }: ChartEvent, hasFigures = true): string {
  if (kind === "open") return "open";
  const size = error === null || !hasFigures ? "" : signedText(error);
  return [size, faultNames(faults)].filter((part) => part !== "").join(" ");
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

/** "0.4 graduations past 38", "1.2 graduations short of 38", "on 38". */
function errorText(error: Graduations, number: string): string {
  const size = Math.abs(error).toFixed(1);
  if (size === "0.0") return `on ${number}`;
  return `${size} ${size === "1.0" ? "graduation" : "graduations"} ${error > 0 ? "past" : "short of"} ${number}`;
}

const stopName = (event: ChartEvent, lock: Lock, hasFigures: boolean) => {
  const number = numberText(lock, event.step);
  if (!hasFigures) return `Stop for ${number}`;
  return `Stop at ${positionText(event.position, lock)}, ${errorText(event.error ?? 0, number)}`;
};

type NameOf = (event: ChartEvent, lock: Lock, hasFigures: boolean) => string;

const EVENT_NAMES: Readonly<Record<ChartEvent["kind"], NameOf>> = {
  arrival: arrivalName,
  stop: stopName,
  open: (event, lock, hasFigures) => (hasFigures ? `Bolt back at ${positionText(event.position, lock)}` : "Bolt back"),
  fault: (event) => capital(faultNames(event.faults)),
};

/** An event in a few words. @param hasFigures - whether readings and sizes may be told */
export function eventName(event: ChartEvent, lock: Lock, hasFigures = true): string {
  return EVENT_NAMES[event.kind](event, lock, hasFigures);
}

/** What there is to add to an event's name: the first sentence of each fault, or else where it lies. */
export function eventDetail({ faults, turn, turns }: ChartEvent, hasFigures = true): string {
  const [said] = faults;
  if (said === undefined) return hasFigures ? `turning ${turn}, ${turnsText(turns)}` : `turning ${turn}`;
  const more = faults.length > 1 ? ` Also: ${faultNames(faults.slice(1))}.` : "";
  return `${said.happened}.${more}`;
}

/** What a stretch of the chart is for: "L 33", "R draw". */
export function stretchLabel({ turn, step }: Stretch, lock: Lock): string {
  const letter = capital(turn).charAt(0);
  if (step === null) return letter;
  return `${letter} ${step < lock.profile.procedure.length ? numberText(lock, step) : "draw"}`;
}

/** A point of the path in words: what it reads, which way it goes, after how many turns. */
export function pointText(position: Graduations, turn: Turn, turns: number, lock: Lock): string {
  return `Reading ${positionText(position, lock)}, turning ${turn}, ${turnsText(turns)}`;
}

/** What the next stop of the path is: "stop 0.4 graduations past 33"; empty where there is none. */
export function stopText(stop: ChartEvent | undefined, lock: Lock): string {
  if (stop === undefined) return "";
  return `stop ${errorText(stop.error ?? 0, numberText(lock, stop.step))}`;
}
