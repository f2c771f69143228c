import type { FitFault } from "../../../../fitting/fitFaultCode";
import type { LockToFit } from "../../../../fitting/fittedLock";
import { FITTING } from "../../../../fitting/trainingValues";
import { sizeText } from "../../../../wording/amountWords";

const insideText = (out_mm: number) => (out_mm < 0 ? `${-out_mm} mm inside` : `${out_mm} mm out`);

/** What a good fit measures, by check. */
export function limitLines({ sizes, perTurn, isElectronic }: LockToFit): readonly string[] {
  const { gapLeast_mm, gapMost_mm, outLeast_mm, outMost_mm, endPlayMost_mm, markRadius_mm, keyways } = sizes;
  const worst = (FITTING.offCenterMost_mm / markRadius_mm) * (perTurn / (2 * Math.PI));
  return [
    `Depth gauge: from ${insideText(outLeast_mm)} to ${insideText(outMost_mm)} of the cam.`,
    `Feeler gauge: the thickest leaf that goes in is ${gapLeast_mm} to ${gapMost_mm} mm, all round.`,
    `Turned all round: the hand gets at most ${FITTING.aheadMost} graduation ahead. Where the dial scrapes, the rub adds ${FITTING.rubDrag} graduations.`,
    `Push and pull: the dial moves at most ${endPlayMost_mm} mm.`,
    `Slit at the rim: it varies by at most ${2 * FITTING.bentMost_mm} mm as the dial goes round.`,
    `Dial with the ${isElectronic ? "cam at its mark" : "gate under the nose"}: near 0. A wrong keyway makes it ${sizeText(perTurn / keyways)} graduations off, or more.`,
    `Four marks: none is more than ${worst.toFixed(2)} graduations off the average of all four.`,
  ];
}

/** The faults by where one looks for them. */
export const FAULT_GROUPS: readonly { readonly title: string; readonly faults: readonly FitFault[] }[] = [
  { title: "Ring and dial", faults: ["ring-off-center", "ring-loose", "rubs", "gap-wide", "end-play", "dial-heavy"] },
  { title: "Spindle", faults: ["spindle-short", "spindle-long", "spindle-bent", "locker-astray"] },
  {
    title: "Key",
    faults: ["wrong-keyway", "key-not-seated", "key-screw-loose", "key-screw-stripped", "key-screw-unsecured"],
  },
  {
    title: "Body, strike and cover",
    faults: ["body-by-one-screw", "strike-missing", "strike-by-one-screw", "bolt-binds", "cover-off"],
  },
  {
    title: "Electronics",
    faults: ["battery-missing", "battery-reversed", "fuse-blown", "cable-out", "encoder-not-found", "board-harmed"],
  },
];

export const FIND_CAUTIONS = [
  "Work with the door open and held, and keep your fingers clear of the bolt. Never shut a door on a lock that is not proved.",
  "Before you take the cover off an electronic lock, wear the wrist strap: static can destroy it.",
  "The maker's written instructions decide sizes, torque and where thread locker goes. Local codes and your license decide what you may do.",
];
