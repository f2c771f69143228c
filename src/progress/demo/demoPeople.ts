import type { Graduations } from "../../lock/dial";

/** An invented person and the hand the demo draws for them. */
export interface DemoPerson {
  readonly name: string;
  readonly part: "trainee" | "instructor";
  /** Stop errors, graduations along the turn; null for someone who does not dial. */
  readonly hand: {
    readonly bias: Graduations;
    readonly spread: Graduations;
    /** Share of attempts in which the second number gets a turn too many. */
    readonly miscounts: number;
    /** Graduations a second. */
    readonly speed: number;
  } | null;
}

/** The people of Underbell Yard Trade School. All invented; they stand for no real person. */
export const DEMO_PEOPLE: readonly DemoPerson[] = [
  { name: "Kessinda", part: "instructor", hand: null },
  { name: "Ondrell", part: "trainee", hand: { bias: 0, spread: 0.35, miscounts: 0, speed: 22 } },
  { name: "Pelline", part: "trainee", hand: { bias: 0.1, spread: 0.45, miscounts: 0, speed: 28 } },
  { name: "Tavro", part: "trainee", hand: { bias: -0.2, spread: 0.6, miscounts: 0, speed: 28 } },
  { name: "Dorvik", part: "trainee", hand: { bias: 0.6, spread: 0.5, miscounts: 0, speed: 45 } },
  // Loses count when spoken to.
  { name: "Mibsy", part: "trainee", hand: { bias: 0.3, spread: 0.7, miscounts: 0.17, speed: 30 } },
  { name: "Jorrel", part: "trainee", hand: { bias: 0, spread: 0.9, miscounts: 0, speed: 24 } },
];

/** Pelline's zeroing on Wednesday, as sheet 7 tells it: one left reading spoiled by a nudge. Graduations. */
export const DEMO_ZEROING = {
  name: "Pelline",
  profileId: "dial-encoder",
  readings: [
    { turn: "right", deviation: 0.62 },
    { turn: "right", deviation: 0.71 },
    { turn: "right", deviation: 0.55 },
    { turn: "left", deviation: 0.4, refusal: "came-back" },
    { turn: "left", deviation: -0.12 },
    { turn: "left", deviation: -0.05 },
    { turn: "left", deviation: -0.19 },
  ],
} as const;
