import { small } from "../../dialing/words";
import { FIT_FAULTS } from "../../fitting/fitFaultCode";
import { FAULT_WORDS } from "../../fitting/fitWords";
import type { ChangeFaultCode } from "../../handover/change/changeFault";
import type { HandoverFault } from "../../handover/run/rules/faultTriggers";
import type { ProofCode } from "../../handover/run/rules/proofs";
import type { JobKind } from "../../records/jobRecord";
import type { VisitFault } from "../../service/visitFaultCode";

/** A job in one word or two. */
export const JOB_WORDS: Readonly<Record<JobKind, string>> = {
  change: "Change",
  trouble: "Trouble",
  handover: "Handover",
  fitting: "Fitting",
  service: "Service visit",
  inspection: "Find what is wrong",
};

const CHANGE: Readonly<Record<ChangeFaultCode | "not-changed" | "key-left-turned" | "not-proved", string>> = {
  "key-turned-unaligned": "key turned on wheels out of line",
  "present-at-opening-index": "current combination dialed to the opening index",
  "wrong-index": "new combination dialed to the opening index",
  "number-set-off": "a number set off",
  "present-refused": "current combination refused",
  "entries-differ": "two entries that differed",
  "door-shut-unproved": "door shut before it was proved",
  "locked-out": "locked out",
  "not-changed": "not changed",
  "key-left-turned": "change key left turned",
  "not-proved": "not proved three times",
};

const TROUBLE = {
  "not-named": "another defect named",
  "wrong-place": "right defect, wrong place",
  "not-looked": "a guess: not measured",
  size: "size outside its tolerance",
} as const;

const PROOFS: Readonly<Record<ProofCode | "not-signed", string>> = {
  "fit-checked": "fit not checked",
  mounting: "mounting height not settled",
  ring: "ring not aligned",
  zero: "zero not set",
  "shipped-tried": "shipped combination not tried",
  "own-combination": "no combination of the holders",
  "rules-kept": "no combination that the rules allow",
  "proved-three-times": "not proved three times",
  "second-person": "not opened by a second person",
  "way-out": "way out not checked",
  "observer-inside": "no observer inside",
  "proved-from-outside": "not proved from outside",
  "holdback-shown": "holdback not shown",
  "holdback-off": "holdback left set",
  "spun-off": "not spun off",
  "nobody-inside": "someone left inside",
  record: "record not written",
  "not-signed": "not signed off",
};

const HANDOVER: Readonly<Record<HandoverFault, string>> = {
  "fit-unchecked": "said to be fitted before every check",
  "taken-apart": "taken apart after the ring was aligned",
  "parts-spoiled": "parts spoiled",
  "bad-fit-left": "signed with a bad fit",
  "aligned-unmeasured": "ring fastened before the height was settled",
  "zeroed-on-loose-ring": "zero set on a loose ring",
  "ring-moved": "ring loosened again",
  "dialed-untrue": "dialed a lock that did not read true",
  "proved-held-back": "proved while held back",
  "changed-untrue": "changed a lock that did not read true",
  "changed-untried": "changed before it had been opened",
  "rules-broken": "combination against the rules",
  "set-off": "set to other numbers than written",
  "pack-spoiled": "pack spoiled by the key",
  "second-too-early": "second person too early",
  "held-back-turned": "bolt thrown while held back",
  "shut-unproved": "shut before it was proved",
  "shut-without-second": "shut before a second person had opened it",
  "shut-unobserved": "shut with no observer inside",
  "shut-not-spun-off": "shut without spinning off",
  "shut-held-back": "shut while held back",
  "proved-not-spun-off": "proved without spinning off",
  "opened-by-force": "opened by force",
  "recorded-early": "record written too early",
  "combination-in-record": "combination written into the record",
  "shipped-left": "shipped combination left in",
  "holdback-left-on": "signed with the holdback set",
  "someone-left-inside": "signed with someone inside",
  "signed-too-early": "signed with something missing",
  "shut-in": "someone shut inside",
  "locked-out": "locked out",
};

const FITTING = {
  ...Object.fromEntries(FIT_FAULTS.map((fault) => [fault, small(FAULT_WORDS[fault].what.slice(0, -1))])),
  "not-declared": "not said to be fitted",
  "parts-spent": "parts spoiled",
};

const SERVICE: Readonly<Record<VisitFault["code"] | "not-left", string>> = {
  "not-asked": "holder not asked",
  "section-not-read": "instructions not read",
  "last-record-not-read": "last record not read",
  "look-left-out": "a look left out",
  "not-measured": "a figure not measured as found",
  "acted-without-instructions": "acted without the instructions",
  "door-not-held": "door not held",
  "not-tried-before": "not proved before the work",
  "cover-without-strap": "cover taken off without a strap",
  "torque-not-as-written": "torque not as written",
  "lubricated-forbidden": "lubricated what must stay dry",
  "lubricant-not-as-written": "another lubricant than written",
  "changed-sound": "changed what was not wrong",
  "left-wrong": "a defect left",
  "made-wrong": "a new defect made",
  "cover-left-off": "cover left off",
  "not-proved": "not proved three times",
  "shut-before-proof": "door shut before it was proved",
  "door-left-open": "door left open",
  "no-record": "no record written",
  "record-without-figures": "no figures in the record",
  "record-without-changes": "changes not in the record",
  "record-without-proofs": "proofs not in the record",
  "record-not-true": "record not true",
  "combination-in-record": "combination written into the record",
  "missed-in-record": "a defect not in the record",
  "invented-in-record": "a defect in the record that was not there",
  "not-left": "not ended",
};

const INSPECTION = {
  ...Object.fromEntries(
    FIT_FAULTS.flatMap((fault) => {
      const what = small(FAULT_WORDS[fault].what.slice(0, -1));
      return [
        [`overlooked-${fault}`, `overlooked: ${what}`],
        [`unfounded-${fault}`, `named, but not wrong: ${what}`],
      ];
    }),
  ),
  "not-checked": "a guess: not checked",
  "no-answer": "no answer given",
};

const MISSED = new Map(
  Object.entries({ ...PROOFS, ...HANDOVER, ...TROUBLE, ...CHANGE, ...FITTING, ...SERVICE, ...INSPECTION }),
);

/** Something missed at a job in a few words; a code that is not known here, from another program, as it is. */
export const missedWord = (code: string): string => MISSED.get(code) ?? code.replaceAll("-", " ");
