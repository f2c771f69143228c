import { problemsOf, type Words } from "../wording/problem";
import { FIELD_WORDS } from "./fieldWords";

/** What can be wrong with a profile, a combination or a start. */
export const LOCK_WORDS = {
  ...FIELD_WORDS,
  "unknown-profile": ': profile "{id}" is not known; there are {known}',
  "not-numbers": "must be a list of {wanted} numbers",
  "number-count": "has {count:number|numbers}, but {lock} takes {wanted}",
  "not-a-number": "({number:json}) is not a number",
  "mark-zero": "({number}) is the mark 0 of this dial; write 0",
  "off-dial": "({number}) is off this dial, whose numbers go from 0 to {last}",
  "too-far": ": the dial would be at {position}; positions go from -1e9 to 1e9 graduations",
  "slack-count": "has {count:entry|entries}, but this pack has {wheels:wheel|wheels}",
  "slack-beyond-play": "must be from 0 to the wheel's free play {play}",
  "nose-misfit": "{engagedAt} does not fit a dial at {dial}",
  "same-turn": "must be the other way than the step before it",
  "entry-count": "must have {wanted} entries, one for each step of the procedure, not {count}",
  "above-turn": "must be at most one turn ({graduations} graduations)",
  "above-half-turn": "must be at most half a turn ({most} graduations) either way",
  "half-turn-or-more": "must be below half a turn ({limit} graduations)",
  "off-face": "must be a number from 0 to below {graduations}",
  "encoder-counts": 'must be "at-least" in a dial-encoder lock',
  "draw-is-no-run": "must be more than turnback ({turnback}), or the draw is no run",
  "draws-on":
    "goes on in the direction of the last number, so the draw spoils the last number; {usual} to the last number is usual",
  range: "must be a pair of graduations from {low} to {high} such as {example:json}",
  "low-first": "must have its low end first",
  "one-of-each": 'must be ["right","left"] or ["left","right"]',
  "fewer-than-wanted": "must be at least as many as wanted ({wanted})",
  // Of a fit's size, by its name in words.
  size: "({name}) must be a number of {unit} from {low} to {high}",
  "size-count": "({name}) must be a whole number from {low} to {high}",
  "size-share": "({name}) must be a share from {low} to {high}, such as 0.9",
  "gap-narrow":
    "({name}) leaves less than one turn of the thread ({lead} mm) between gapLeast_mm and gapMost_mm, so the key may find no keyway; widen the gap's limits",
  "spindle-reach":
    "({name}) leaves the spindle shorter than ring, door, plate, body and gap together; make spindle_mm longer",
  "screw-order": "({name}) must leave screwStrips_Nm from 1.6 to 2.9 times screwHolds_Nm",
  "hole-small": "({name}) leaves the strike's hole no higher than the bolt; make hole_mm larger than bolt_mm",
  "washers-misfit":
    "({name}) leaves no good stack of washers: two flat ones and a spring must fill room_mm without play, and must not hold the dial back by more than 1 graduation",
  pair: "must be a pair of numbers such as {example:json}, the lower first",
  "number-or-pair": "must be a number or a pair such as {example:json}, the lower first",
} as const satisfies Words;

/** Problems of profiles, combinations and starts. */
export const lockProblem = problemsOf(LOCK_WORDS);
