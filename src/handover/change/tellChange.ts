import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import type { Graduations } from "../../lock/dial";
import { wrap } from "../../lock/dial";
import type { Change } from "./change";
import {
  type ChangeFault,
  isOtherIndex,
  SET_OFF_LEAST,
  settingErrors,
  type WordedChangeFault,
  wordChangeFaults,
} from "./changeFault";
import type { EncoderChange } from "./encoderChange";
import { opensTo } from "./opensTo";
import { PackChange } from "./packChange";

/**
 * Everything that went wrong in a change so far, worded, in the order of the work.
 *
 * What the lock is set to is read off its mechanics, and whether the new combination opens it is found by dialing it.
 */
export function tellChange(change: Change): WordedChangeFault[] {
  const faults =
    change instanceof PackChange
      ? [...keyFaults(change), ...settingFaults(change)]
      : [...entryFaults(change), ...settingFaults(change)];
  return wordChangeFaults([...faults, ...proofFaults(change)], {
    profile: change.profile,
    wanted: change.wanted,
    setTo: change.setCombination,
  });
}

function keyFaults(change: PackChange): ChangeFault[] {
  if (!change.isSpoiled) return [];
  const { graduations, changing } = change.profile;
  const errors = change.record.turnedAt ?? [];
  const isOther = isOtherIndex(errors, changing.index, changing.keyTolerance, graduations);
  const other: ChangeFault[] = isOther
    ? [{ code: "present-at-opening-index", number: 0, size: Math.abs(changing.index) }]
    : [];
  const sizes = errors.map(Math.abs);
  const size = Math.max(...sizes);
  const numbers = change.keyed.loose.map((k) => k + 1);
  return [...other, { code: "key-turned-unaligned", number: sizes.indexOf(size) + 1, size, numbers }];
}

function entryFaults({ presentRefused, differed, profile }: EncoderChange): ChangeFault[] {
  const refused: ChangeFault[] =
    presentRefused === 0 ? [] : [{ code: "present-refused", number: 0, size: presentRefused }];
  if (differed === null) return refused;
  const [one, other] = differed;
  const apart = one.map((number, k) => Math.abs(wrap(number - (other[k] ?? 0), profile.graduations)));
  const size = Math.max(...apart);
  return [...refused, { code: "entries-differ", number: apart.indexOf(size) + 1, size }];
}

function settingFaults(change: Change): ChangeFault[] {
  if (!change.isSet) return [];
  const { profile, wanted, setCombination } = change;
  const errors = settingErrors({ profile, wanted, setTo: setCombination });
  if (profile.kind === "wheel-pack" && profile.changing !== undefined) {
    const { index, keyTolerance } = profile.changing;
    const isOther = isOtherIndex(errors, index, keyTolerance, profile.graduations);
    if (isOther) return [{ code: "wrong-index", number: 0, size: Math.abs(index) }];
  }
  return errors.flatMap((error: Graduations, k): ChangeFault[] =>
    Math.abs(error) < SET_OFF_LEAST ? [] : [{ code: "number-set-off", number: k + 1, size: Math.abs(error) }],
  );
}

function proofFaults(change: Change): ChangeFault[] {
  const { proofs, isSet, isDoorShut, profile, setCombination, wanted, present } = change;
  if (!isDoorShut) return [];
  const unproved: ChangeFault[] =
    isSet && proofs < PROOFS_WANTED ? [{ code: "door-shut-unproved", number: 0, size: proofs }] : [];
  // Before the change the present combination is the one that is known.
  const isOut = !opensTo(profile, setCombination, isSet ? wanted : present);
  return isOut ? [...unproved, { code: "locked-out", number: 0, size: 0 }] : unproved;
}
