import type { DialingStation, Sheet } from "../drill/sheet/sheet";
import { practiceSheet, redoSheet } from "./practiceSheet";
import type { Suggestion, WhatNext } from "./whatNext";

/** Tries that fit into two minutes, at some 40 s a whole combination. */
const MOST_TRIES = 3;

/** A short practice for today. */
export interface DailyPractice {
  readonly sheet: Sheet;
  /** Misses that it asks for again. */
  readonly misses: number;
  /** Skills that are due, or not shown yet, with one try each. */
  readonly skills: number;
}

const stationsOf = (sheet: Sheet | null): readonly DialingStation[] =>
  (sheet?.stations ?? []).filter((one) => one.kind === "dialing");

/** What is due comes before what is not shown yet. */
const RANK: Readonly<Record<Suggestion["kind"], number>> = { "redo-misses": 0, refresh: 1, "go-on": 2 };

/**
 * Two minutes of practice: the misses that are not made good yet, latest first, then one try each of what is due and of
 * what is not shown yet.
 *
 * @param next - as `whatNext` gives it
 * @returns null where there is nothing to practice, or none of it can be set up here
 */
export function dailyPractice({ suggestions, order }: Pick<WhatNext, "suggestions" | "order">): DailyPractice | null {
  const byNeed = suggestions.toSorted((one, other) => RANK[one.kind] - RANK[other.kind]);
  const latest = byNeed.flatMap(({ misses }) => misses).toSorted((one, other) => other.startedAt - one.startedAt);
  const misses = stationsOf(redoSheet(latest)).slice(0, MOST_TRIES);
  const skills = stationsOf(practiceSheet(byNeed, order))
    .slice(0, MOST_TRIES - misses.length)
    .map((station) => ({ ...station, repetitions: 1 }));
  const stations = [...misses, ...skills];
  if (stations.length === 0) return null;
  const sheet: Sheet = {
    format: "gatefall-sheet",
    version: 1,
    title: "Two minutes",
    purpose: "What you missed last, and what is due today.",
    order: "blocked",
    stations,
  };
  return { sheet, misses: misses.length, skills: skills.length };
}
