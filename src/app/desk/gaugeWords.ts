import {
  type DialingGauge,
  dialingGauge,
  type GaugeParticipants,
  gaugeParticipants,
  type PersonStops,
} from "../../logbook/dialingGauge";
import { categoriesOf, type GaugeSource, STUDY_WIDTH, sourcesOf } from "../../logbook/gaugeCsv";
import type { LogbookContents } from "../../logbook/logbookContents";
import type { PersonRecord } from "../../logbook/records";
import { type Skill, skillKey } from "../../logbook/skill";
import { contributionShare, studyShare } from "../../statistics/gaugeComponents";
import type { TableModel } from "../logbook/figures/figureModel";
import { countText, fineText, percentText, sizeText } from "../logbook/figures/numbers";

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
  gauge: "Both together",
  equipment: "Repeatability, one hand again",
  appraiser: "Reproducibility, person to person",
  interaction: "Persons who differ from number to number",
  part: "Number to number",
  total: "In all",
};

function sourcesTable(gauge: DialingGauge): TableModel {
  const { components, people, trials } = gauge;
  return {
    caption: `${countText(people.length, "person", "people")}, ${trials} stops each at every number; standard deviations and 6 of them in graduations`,
    head: ["source", "sd", `${STUDY_WIDTH} sd`, "% contribution", "% study variation"],
    rows: sourcesOf(gauge).map((source) => [
      SOURCE_WORDS[source],
      sizeText(components[source]),
      sizeText(STUDY_WIDTH * components[source]),
      percentText(contributionShare(components, source)),
      percentText(studyShare(components, source)),
    ]),
  };
}

type Names = ReadonlyMap<string, string>;

function meansTable({ means, people }: DialingGauge, places: readonly number[], names: Names): TableModel {
  return {
    caption: "Mean stop error, graduations; plus ran past",
    head: ["person", ...places.map((place) => `number ${place}`)],
    rows: people.map(({ id, name }, j) => [
      names.get(id) ?? name,
      ...means.map((byPerson) => fineText(byPerson[j] ?? null)),
    ]),
  };
}

function studySentence(gauge: DialingGauge): string {
  const { equipment, appraiser } = gauge.components;
  const hand = `One hand differs from itself by ${sizeText(equipment)} graduations (standard deviation)`;
  const people = `one person from another by ${sizeText(appraiser)}`;
  const larger =
    equipment >= appraiser
      ? "steadier hands would gain more than equal ones."
      : "people differ more than their hands do: compare where each one stops.";
  return `${hand}, ${people}: ${larger}`;
}

/** Where the stops of someone are too few: "Jorrel has 1 stop at number 2". */
function lackOf({ person, stops }: PersonStops, { places }: GaugeParticipants, names: Names): string {
  const fewest = Math.min(...stops.map(({ length }) => length));
  const place = places[stops.findIndex(({ length }) => length === fewest)];
  const where = place === undefined ? "" : ` at number ${place}`;
  const count = fewest === 0 || place === undefined ? "no stop" : countText(fewest, "stop");
  return `${names.get(person.id) ?? person.name} is left out: ${count}${where}, and two are needed.`;
}

function balanceSentence({ taking, trials }: GaugeParticipants): string[] {
  const most = Math.max(0, ...taking.flatMap(({ stops }) => stops.map(({ length }) => length)));
  if (taking.length < 2 || most === trials) return [];
  return [
    `The stops are not balanced, up to ${most} at a number: everyone counts with the latest ${trials}, as many as the one with fewest has.`,
  ];
}

/** How many groups of numbers the stops tell apart, with what that means here. */
export function categoriesSentence(gauge: DialingGauge): string {
  const categories = categoriesOf(gauge);
  if (gauge.study === null) return "One number alone has no parts to tell apart: choose all numbers for categories.";
  if (categories === null) return "Nobody’s hand varies, so categories cannot be counted.";
  const pooled = gauge.study.wasPooled ? " Persons differ alike at every number, so that was counted as chance." : "";
  return `Distinct categories: ${categories}. That is how many groups of numbers the stops tell apart; at a dial few are wanted, for every number is to be met alike.${pooled}`;
}

/**
 * The gauge study of one skill over the trainees of a class.
 *
 * @param place - the one number to study, counted from 1; null for all
 */
export function gaugeView({ records }: LogbookContents, skill: Skill, place: number | null, names: Names): GaugeView {
  const nameOf = ({ id, name }: PersonRecord) => names.get(id) ?? name;
  const trainees = records.people
    .filter(({ part }) => part === "trainee")
    .sort((a, b) => nameOf(a).localeCompare(nameOf(b)));
  const attempts = records.attempts
    .filter((one) => skillKey(one) === skillKey(skill))
    .sort((a, b) => a.startedAt - b.startedAt);
  const participants = gaugeParticipants(trainees, attempts, place);
  const lacks = participants.leftOut.map((one) => lackOf(one, participants, names));
  const found = dialingGauge(trainees, attempts, place);
  if ("lacking" in found) {
    return { gauge: null, sentence: `No study yet. ${found.lacking}`, lacks, sources: null, means: null };
  }
  return {
    gauge: found,
    sentence: studySentence(found),
    lacks: [...balanceSentence(participants), ...lacks],
    sources: sourcesTable(found),
    means: meansTable(found, participants.places, names),
  };
}
