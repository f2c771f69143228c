import type { BrokenRule } from "../../drill/combinations/combinationRules";
import type { Graduations, Turn } from "../../lock/dial";

/** One dialing of the numbers, and whether the lock opened: it says no more. */
export interface TryObservation {
  readonly kind: "try";
  readonly by: "own hand" | "steady hand";
  /** What the index read at the stop of each number, graduations in [0, one turn). */
  readonly stops: readonly Graduations[];
  /** How far each stop lay from the written number, graduations, left positive. */
  readonly off: readonly Graduations[];
  /** Rest before the last number, seconds; null where the own hand dialed. */
  readonly rest_s: number | null;
  /** Whether the turns were as asked; stops aside. */
  readonly isTurnedRight: boolean;
  readonly opened: boolean;
}

/** The gauge on the cam: how far the cam stands left of what the index reads, after turning one way. Graduations. */
export interface CamObservation {
  readonly kind: "cam";
  readonly turn: Turn;
  readonly value: Graduations;
}

/** The pull gauge on the dial: how far the hand goes before the dial moves. Graduations. */
export interface PullObservation {
  readonly kind: "pull";
  readonly turn: Turn;
  readonly value: Graduations;
}

/** The written numbers held against the rules. */
export interface RulesObservation {
  readonly kind: "rules";
  readonly broken: readonly BrokenRule[];
}

/** What four marks of the ring read too much, clockwise from the top, with a straightedge through the axis. Graduations. */
export interface MarksObservation {
  readonly kind: "marks";
  readonly values: readonly Graduations[];
}

/** A dial gauge on the dial, pushed and pulled. */
export interface PushObservation {
  readonly kind: "push-pull";
  readonly moves_mm: number;
}

/** The dial turned all round: the least and the most that the hand gets ahead of it, graduations, and whether it scrapes. */
export interface RoundObservation {
  readonly kind: "turn-round";
  readonly least: Graduations;
  readonly most: Graduations;
  readonly scrapes: boolean;
}

/** What a trainee has seen, in the order it was seen. */
export type Observation =
  | TryObservation
  | CamObservation
  | PullObservation
  | RulesObservation
  | MarksObservation
  | PushObservation
  | RoundObservation;

/** What an observation shows, as marks ask for it. */
export type Evidence =
  | "cam-left"
  | "cam-right"
  | "pull"
  | "rules"
  | "marks"
  | "push-pull"
  | "turn-round"
  | "off-try"
  | "rest-try";

/** A stop this far from its number was meant to be off, graduations. */
const MEANT: Graduations = 0.15;

function evidenceOf(seen: Observation): Evidence[] {
  switch (seen.kind) {
    case "cam":
      return [seen.turn === "left" ? "cam-left" : "cam-right"];
    case "pull":
    case "rules":
    case "marks":
    case "push-pull":
    case "turn-round":
      return [seen.kind];
    case "try":
      return [
        ...(seen.off.some((one) => Math.abs(one) > MEANT) ? (["off-try"] as const) : []),
        ...((seen.rest_s ?? 0) > 0 ? (["rest-try"] as const) : []),
      ];
  }
}

/** All that observations show. */
export function evidenceIn(log: readonly Observation[]): ReadonlySet<Evidence> {
  return new Set(log.flatMap(evidenceOf));
}
