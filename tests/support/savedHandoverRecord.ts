import clean from "../../shared/handovers/clean.json" with { type: "json" };
import { checkRun } from "../../src/handover/run/checkRun";
import { parseRun } from "../../src/handover/run/recordedRun";
import { type HandoverRecord, handoverRecord, type RecordFacts } from "../../src/records/handover/handoverRecord";
import type { RecordForm } from "../../src/records/handover/recordForm";

/** A form that is filled in. */
export const RECORD_FORM: RecordForm = {
  technician: "P. Underbell",
  second: "R. Tarn",
  takenOverBy: "D. Mallow",
  authorizedBy: "",
  lock: "Lock 417",
  door: "Tool crib, door 2",
  date: "2026-11-26",
  holders: "D. Mallow and the night desk",
  remarks: "",
};

/** What a record is made from after a clean handover. */
export const RECORD_FACTS: RecordFacts = {
  form: RECORD_FORM,
  profileId: "three-wheel",
  seed: 5,
  result: checkRun(parseRun(clean)),
  zero: null,
  height_in: 44,
};

/** The record of a clean handover. */
export const savedHandoverRecord = (): HandoverRecord => handoverRecord(RECORD_FACTS);
