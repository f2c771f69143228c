import { FIELD_WORDS } from "../lock/fieldWords";
import { problemsOf, type Words } from "../wording/problem";

/** What can be wrong with a recorded attempt. */
export const TRACE_WORDS = {
  ...FIELD_WORDS,
  "no-attempt": 'must be an object with "profile", "combination" and "positions"',
  "no-position": "must hold at least one position",
  "no-profile": "must be the id of a profile or a whole one",
  "position-too-far": "must lie within 1e9 graduations of zero",
  "time-count": "has {count:entry|entries} for {wanted:position|positions}; give one each, or leave it out",
  "time-falls": "({time}) is earlier than the time before it",
  "slack-without-wheels": "is for wheel packs, and {lock} has none; leave it out",
  "too-deep": "is nested more than 100 deep, and no recorded attempt is",
  "not-json": "is not one whole JSON object: {beginning}",
  "unpacks-to-more": ": it unpacks to more than {most} bytes",
  "ends-too-soon": ": it ends too soon",
  "many-attempts": ": there are {count} attempts here; keep only the one you want to see",
} as const satisfies Words;

/** Problems of recorded attempts. */
export const traceProblem = problemsOf(TRACE_WORDS);
