import clean from "../../shared/handovers/clean.json" with { type: "json" };
import { type HandoverRecord, handoverRecord } from "../../src/handover/record/handoverRecord";
import { checkRun } from "../../src/handover/run/checkRun";
import { parseRun } from "../../src/handover/run/recordedRun";

/** The record of a clean handover. */
export const savedHandoverRecord = (): HandoverRecord =>
  handoverRecord({
    form: {
      technician: "P. Underbell",
      second: "R. Tarn",
      takenOverBy: "D. Mallow",
      authorizedBy: "",
      lock: "Lock 417",
      door: "Tool crib, door 2",
      date: "2026-11-26",
      holders: "D. Mallow and the night desk",
      remarks: "",
    },
    profileId: "three-wheel",
    seed: 5,
    result: checkRun(parseRun(clean)),
    zero: null,
    height_in: 44,
  });
