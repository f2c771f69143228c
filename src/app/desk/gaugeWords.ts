import { capital } from "../../dialing/words";
import { categoriesOf, type GaugeSource, STUDY_WIDTH, sourcesOf } from "../../progress/csv/gaugeCsv";
import { handsOfClass, ofHand } from "../../progress/oneHand";
import {
  type DialingGauge,
  dialingGauge,
  type GaugeParticipants,
  gaugeParticipants,
  type PersonStops,
} from "../../progress/stops/dialingGauge";
import type { Hand } from "../../realdial/sources/handOf";
import type { LogbookContents } from "../../records/logbookContents";
import type { PersonRecord } from "../../records/records";
import { type Skill, skillKey } from "../../records/skill";
import { contributionShare, studyShare } from "../../statistics/gauge/gaugeComponents";
import { countText } from "../../wording/amountWords";
import { fineText, percentText, unsignedText } from "../parts/numbers";
import type { TableModel } from "../pictures/charts/figureModel";

/** A gauge study of the class, ready to show. */
export interface GaugeView {
  /** Null where it lacks something. */
  readonly gauge: DialingGauge | null;
  readonly sentence: string;
  /** What is missing or was left out, sentence by sentence. */
  readonly lacks: readonly string[];
  readonly sources: TableModel | null;
  readonly means: TableModel | null;
}

const SOURCE_WORDS: Readonly<Record<GaugeSource, string>> = {
  gauge: "One person again and person to person",
  equipment: "One person again (repeatability)",
  appraiser: "Person to person (reproducibility)",
  interaction: "People who differ by number (interaction)",
  part: "Number to number (parts)",
  total: "Together",
};

function sourcesTable(gauge: DialingGauge): TableModel {
  const { components, people, trials } = gauge;
  return {
    caption: `${countText(people.length, "person", "people")}, ${trials} stops each at every number; standard deviations and 6 of them in graduations`,
    head: ["source", "sd", `${STUDY_WIDTH} sd`, "% contribution", "% study variation"],
    rows: sourcesOf(gauge).map((source) => [
      SOURCE_WORDS[source],
      unsignedText(components[source]),
      unsignedText(STUDY_WIDTH * components[source]),
      percentText(contributionShare(components, source)),
      percentText(studyShare(components, source)),
    ]),
  };
}

type Names = ReadonlyMap<string, string>;

function meansTable({ means, people }: DialingGauge, places: readonly number[], names: Names): TableModel {
  return {
    caption: "Average stop error in graduations; plus ran past",
    head: ["person", ...places.map((place) => `number ${place}`)],
    rows: people.map(({ id, name }, j) => [
      names.get(id) ?? name,
      ...means.map((byPerson) => fineText(byPerson[j] ?? null)),
    ]),
  };
}

function studySentence(gauge: DialingGauge): string {
  const { equipment, appraiser } = gauge.components;
  const hand = `The stops of one person vary by ${unsignedText(equipment)} graduations from try to try`;
  const people = `people differ from each other by ${unsignedText(appraiser)}`;
  const larger =
    equipment >= appraiser
      ? "Practice that makes each person steadier gains most."
      : "Compare where each person stops: that gains most.";
  return `${hand}, and ${people} (standard deviations). ${larger}`;
}

/** Where the stops of someone are too few: "Jorrel has 1 stop at number 2". */
function lackOf({ person, stops }: PersonStops, { places }: GaugeParticipants, names: Names): string {
  const fewest = Math.min(...stops.map(({ length }) => length));
  const place = places[stops.findIndex(({ length }) => length === fewest)];
  const where = place === undefined ? "" : ` at number ${place}`;
  const count = fewest === 0 || place === undefined ? "no stop" : countText(fewest, "stop");
  return `${names.get(person.id) ?? person.name} is left out: ${count}${where}; two are needed.`;
}

function balanceSentence({ taking, trials }: GaugeParticipants): string[] {
  const most = Math.max(0, ...taking.flatMap(({ stops }) => stops.map(({ length }) => length)));
  if (taking.length < 2 || most === trials) return [];
  return [
    `People have different numbers of stops, up to ${most} at a number. Only the latest ${trials} of each count, as many as the person with the fewest has.`,
  ];
}

/** How many groups of numbers the stops tell apart, with what that means here. */
export function categoriesSentence(gauge: DialingGauge): string {
  const categories = categoriesOf(gauge);
  if (gauge.study === null) return "Choose all numbers to count categories.";
  if (categories === null) return "No one’s stops vary, so categories cannot be counted.";
  const pooled = gauge.study.wasPooled
    ? " People differ in the same way at every number, so the interaction is counted as chance."
    : "";
  return `Distinct categories: ${categories}, the groups of numbers that the stops tell apart. Few are good here, since every number should be met equally well.${pooled}`;
}

const TOO_FEW = "It needs two people with two stops each at every number.";

/**
 * The gauge study of one skill over the trainees of a class.
 *
 * @param place - the one number to study, counted from 1; null for all
 * @param hand - that turned the dial; that of the class where left out (`handsOfClass`)
 */
export function gaugeView(
  { records }: LogbookContents,
  skill: Skill,
  place: number | null,
  names: Names,
  hand: Hand = handsOfClass(records.attempts)[0],
): GaugeView {
  const nameOf = ({ id, name }: PersonRecord) => names.get(id) ?? name;
  const trainees = records.people
    .filter(({ part }) => part === "trainee")
    .sort((a, b) => nameOf(a).localeCompare(nameOf(b)));
  const attempts = ofHand(records.attempts, hand)
    .filter((one) => skillKey(one) === skillKey(skill))
    .sort((a, b) => a.startedAt - b.startedAt);
  const participants = gaugeParticipants(trainees, attempts, place);
  const lacks = participants.leftOut.map((one) => lackOf(one, participants, names));
  const found = dialingGauge(trainees, attempts, place);
  if ("lacking" in found) {
    const why = found.lacking === null ? TOO_FEW : `${capital(found.lacking.message)}.`;
    return { gauge: null, sentence: `No study yet. ${why}`, lacks, sources: null, means: null };
  }
  return {
    gauge: found,
    sentence: studySentence(found),
    lacks: [...balanceSentence(participants), ...lacks],
    sources: sourcesTable(found),
    means: meansTable(found, participants.places, names),
  };
}
