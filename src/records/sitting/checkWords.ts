import { type Problem, problemsOf, type Words, wordsOf } from "../../wording/problem";
import { CHANGED } from "../hashedRecord";
import { SOURCES_WORDS } from "../sourcesWords";

/** What a try cannot have been: the rest of a sentence that begins with its place. */
const TRY_WORDS = {
  ...SOURCES_WORDS,
  "numbers-dialed": "dials {count:number|numbers}, but its lock has {length}",
  "stop-errors": "has {count:stop error|stop errors}, but its lock has {length:number|numbers}",
  "late-fault": "has a fault at a number that its lock does not have",
  "opened-not-drawn": "is recorded as opened, but the bolt was never drawn",
  "opened-off": "is recorded as opened, but its stop at number {number} is outside the lock's tolerance",
  "in-no-time": "is recorded as {done} in no time",
  "unpaired-verdict": "has a verdict without a mean, or a mean without a verdict",
  "refused-count": "counts {refused:refused stop|refused stops}, but {counted:is|are} on record",
  "far-stop": "counts stop {number}, which is too far off zero to count",
  "stop-not-asked": "has a stop that its series did not ask for",
  "another-zero": "does not follow from its stops: they give another zero",
  "numbers-set": "sets {count:number|numbers}, but its lock has {length}",
  "no-defect": "names no defect that was to be found",
  "defect-not-drawn": 'has the defect "{defect}", which its station does not draw from',
  "named-wrong": 'is recorded as named right: "{named}" for "{defect}"',
  "size-of-wrong": "has a size for a defect that was not named right",
  "named-unseen": "is recorded as named right without a look at the lock",
  "proof-twice": "lists the same missing proof twice",
  "fault-twice": "lists the same fault twice",
  "check-twice": "lists the same skipped check twice",
  "declared-apart": "is recorded as said to be fitted with parts still in the tray",
  "fitted-unmoved": "is recorded as fitted with {moves:part|parts} moved, and a fit takes at least {least}",
  "defect-twice": "lists the same defect twice",
  "cells-of-wheel-pack": "has a wheel pack with batteries",
  "other-told": "has faults that do not follow from what was wrong and what its record names",
  "other-parts": "names a fault or a check that there is not on its lock",
  "fault-of-no-fit": "has faults of a fit with {moves:part|parts} moved, and a fit takes at least {least}",
  "served-idle": "is recorded as a service without a fault with {acts:act|acts}, and one takes at least {least}",
  "other-visit": "has other things wrong with its lock than sheet and seed lead to",
  "other-defect": "has another defect than sheet and seed lead to",
  "other-fit": "has other faults than the fit that sheet and seed lead to",
  "other-fitting": "has a lock that does not come of its acts on the parts that sheet and seed lead to",
  "fit-unasked": "says how its lock was fitted, but at its station the lock is on the door",
  "fit-unsaid": "does not say how its lock was fitted, which its station asks for first",
  "fit-unfinished": "is recorded as handed over with its lock in parts, or not checked",
  "fit-fault-unsaid": "has faults that do not follow from how its lock was fitted",
  "begun-again-unasked": "is recorded as begun again, but at its station no try is",
  "doubt-not-begun-again": "has turns in doubt and was not begun again, as its station asks",
  "motion-though-none": "says that no motion of it was kept, but has a recording",
  "lost-with-result": "is recorded as lost, but has a result",
  "other-kind": 'is of kind "{kind}", but its station is of kind "{wanted}"',
  "beyond-repetitions": "is repetition {repetition} at a station that has only {repetitions}",
  "no-station": "is at a station that the sheet does not have",
  "place-taken": "has the same place as an earlier one",
  "not-planned": "is not the one that sheet and seed lead to: station, repetition, kind or combination differ",
  "recording-does-not-open": "is recorded as opened, but its recording does not open the lock",
  "recording-opens": "is recorded as not opened, but its recording opens the lock here",
  "recording-lasts": "is recorded with {time} ms, but its recording lasts {lasts} ms",
  "other-stop-errors": "has other stop errors than its recording",
  "other-faults": "has other faults than its recording",
  "other-start": "starts from another place than sheet and seed lead to",
  "recording-impossible": "has a recording that its lock cannot follow: {why}",
  "recording-unreadable": "has a recording that cannot be read",
} as const satisfies Words;

/** What an answer cannot have been. */
const ANSWER_WORDS = {
  "other-question": 'is to question "{question}", which sheet and seed do not lead to',
  "no-such-choice": "takes choice {choice}, which the question does not have",
  "marked-otherwise": "is recorded as {recorded}, but by the question bank it is {marked}",
} as const satisfies Words;

/** What a record says that cannot be, or that does not follow from the rest of it; each a sentence. */
const CHECK_WORDS = {
  ...TRY_WORDS,
  ...ANSWER_WORDS,
  "try-misfit": "Try {place} {misfit}.",
  "answer-misfit": "Answer {place} {misfit}.",
  "same-recording": "Tries {one} and {other} have the same recording.",
  changed: CHANGED,
  "other-marks": "The marks do not follow from the tries on record, by the rules of this version.",
  "other-locks": "A lock of the record is not the one this version has under its name.",
  "other-fingerprint": "The sheet's fingerprint on record is not that of the sheet on record.",
  "other-version":
    "Version {made} made it, and this is version {here}: the difference may come from the version, not from the record. Check it with version {made}.",
  "nothing-replayed": "There are no recordings in this record: its openings were not replayed.",
  "one-not-replayed": "Try {place} has no recording: it was not replayed.",
  "some-not-replayed": "Tries {places} and {last} have no recording: they were not replayed.",
  "one-kept-none": "Try {place} was turned with no motion kept, as the candidate chose: it was not replayed.",
  "some-kept-none":
    "Tries {places} and {last} were turned with no motion kept, as the candidate chose: they were not replayed.",
  "nobody-named": "The record names no one. Only the file says whose it is.",
  "file-differs": "The file says {said} ({name}); its record says {is}.",
  "field-taken-out": "It has no {field}, and version {version} puts one in every record.",
  "too-many-tries": "The sheet has {planned:try|tries}, but {tries:is|are} on record.",
  "too-many-answers": "The sheet asks {planned:question|questions}, but {answers:answer is|answers are} on record.",
  "not-whole": "It is recorded as finished, but some of its tries or answers are missing.",
  "tries-missing": "It is recorded as finished with {tries} of {planned:try|tries}.",
  "answers-missing": "It is recorded as finished with {answers} of {planned:answer|answers}.",
  "early-answers": "There are answers on record, but questions come only after the last try.",
  "answered-twice": 'Question "{question}" is answered twice.',
  "recording-count":
    "It holds {recordings:recording|recordings} for {tries:try|tries}; there must be one place for each.",
  "tries-too-long": "The tries took {tries} s together, but the whole sitting took {whole} s.",
  "over-time": "It was finished after {worked} s, but the sheet allows {limit} s.",
  "time-not-up": "It is recorded as ended because time was up, but that was after {worked} s of {limit} s.",
  "pause-count": "Pauses on record: {pauses}; pauses listed with their lengths: {listed}.",
  "reload-count": "Reloads on record: {reloads}; reloads listed with their lengths: {listed}.",
  "break-without-length": "A pause or reload has no length, and it is not one that version 0.2.0 counted.",
  "breaks-out-of-order": "The pauses and reloads are not in the order of their times.",
  "break-after-end": "A pause, reload or clock change lies after the end.",
  "plan-not-made": "The plan of the tries cannot be made again from the sheet: {why}.",
  "questions-not-made": "The choice of the questions cannot be made again from the sheet: {why}.",
  "other-seed": "The seed is {seed}, but the sheet sets {set}.",
  "pauses-not-allowed": "There are pauses ({pauses}) on record, but the sheet allows none.",
  "reload-not-allowed": "It went on after a reload, but by the sheet a reload ends the sitting.",
  "lost-without-reload": "Tries lost to a reload: {lost}; reloads on record: {reloads}.",
  "no-time-set": "It is recorded as ended because time was up, but the sheet sets no time limit.",
} as const satisfies Words;

/** Findings of a check. */
export const checkProblem = problemsOf(CHECK_WORDS);

/** A finding about one try, counted from 1. */
export const tryProblem = (place: number, misfit: Problem): Problem =>
  checkProblem("try-misfit", [], { place, misfit });

/** What a check found, a sentence each. */
export const checkSentences = (found: readonly Problem[]): string[] => found.map((one) => wordsOf(one, CHECK_WORDS));
