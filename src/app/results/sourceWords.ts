import { admitsSource, marksFractions } from "../../drill/marking/isAdmitted";
import type { Admission } from "../../drill/sheet/admission";
import type { Station } from "../../drill/sheet/sheet";
import type { Hand } from "../../realdial/sources/handOf";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import type { SourceKind } from "../../realdial/sources/sourceKinds";
import { type SourcedRecord, sourcesOf } from "../../records/sourceTexts";
import { graduationsText } from "../../wording/amountWords";

/** What turned a dial, within a sentence. */
export const SOURCE_NAMES: Readonly<Record<SourceKind, string>> = {
  screen: "the screen (pointer, keys, wheel or buttons)",
  "printed-dial": "a printed dial before the camera",
  "ordinary-dial": "an ordinary dial before the camera",
  encoder: "an encoder",
  phone: "a phone on the knob",
  midi: "a MIDI knob",
  gamepad: "a game controller",
  "knob-keys": "a knob that sends keys",
};

/** What turned the dial, as a name in a list. */
export const HAND_NAMES: Readonly<Record<Hand, string>> = {
  screen: "Screen",
  "printed-dial": "Printed dial",
  "ordinary-dial": "Ordinary dial",
  encoder: "Encoder",
  phone: "Phone on the knob",
  midi: "MIDI knob",
  gamepad: "Game controller",
  "knob-keys": "Knob that sends keys",
  mixed: "Mixed",
};

function sourceWords({ kind, resolution, noise, isCoarse, keepsNoMotion }: SourceDescription): string {
  if (kind === "screen") return SOURCE_NAMES[kind];
  const size = (one: number) => graduationsText(String(Number(one.toPrecision(2))));
  const rest = noise === null ? "noise at rest not measured" : `noise at rest ${size(noise)}`;
  const coarse = isCoarse ? ", coarse" : "";
  const motion = keepsNoMotion === true ? "; no motion kept, by choice" : "";
  return `${SOURCE_NAMES[kind]} (steps of ${size(resolution)}${coarse}; ${rest}${motion})`;
}

/** What turned the dial of a record, with its steps and its noise, within a sentence. */
export const turnedWithText = (record: SourcedRecord): string => sourcesOf(record).map(sourceWords).join(", then ");

/** What turned the dial of a record, a sentence or two. */
export function turnedBySentence(record: SourcedRecord & { readonly isNotAdmitted?: boolean | undefined }): string {
  const mixed = sourcesOf(record).length > 1 ? "Mixed: turned by" : "Turned by";
  const refused =
    record.isNotAdmitted === true ? " Its station does not admit that, so it does not count as right." : "";
  return `${mixed} ${turnedWithText(record)}.${refused}`;
}

/** What a station admits, for whoever sets it and whoever sits it. */
export const ADMISSION_WORDS: Readonly<Record<Admission, string>> = {
  any: "Any source",
  screen: "The screen only",
  "real-dial": "A real dial only",
  "not-coarse": "No coarse source",
};

const ADMISSION_SENTENCES: Readonly<Record<Exclude<Admission, "any">, string>> = {
  screen: "Turn the dial on the screen: with pointer, keys, wheel or buttons. Nothing else counts.",
  "real-dial":
    "Turn a real dial: a printed or ordinary dial before the camera, an encoder, or a phone on the knob. Nothing else counts.",
  "not-coarse":
    "Do not turn the dial with a coarse source, whose steps are half a graduation or more. Such a try does not count.",
};

/** Said of every station whose stops are marked to a fraction. */
const FRACTIONS_SENTENCE =
  "Stops are marked to a fraction of a graduation here. A coarse source, whose steps are half a graduation or more, does not count.";

const admissionOf = (station: Station): Admission => ("turnedBy" in station ? (station.turnedBy ?? "any") : "any");

/** What may turn the dial of a station, where that is limited by its sheet; null where it is not. */
export function admissionSentence(station: Station): string | null {
  const admission = admissionOf(station);
  return admission === "any" ? null : ADMISSION_SENTENCES[admission];
}

/** Why a source does not turn the dial of a station, in sentences; null where it does. */
export function refusedSourceSentence(source: SourceDescription, station: Station, place: string): string | null {
  if (admitsSource(source, station)) return null;
  const why = admissionSentence(station) ?? (marksFractions(station) ? FRACTIONS_SENTENCE : "");
  return `${place}: ${SOURCE_NAMES[source.kind]} does not turn the dial here. ${why}`;
}
