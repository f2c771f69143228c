import type { core } from "zod/mini";
import { type Combination, parseCombination } from "../../lock/combination";
import { fieldProblem } from "../../lock/fieldProblem";
import { LockError } from "../../lock/lockError";
import type { Profile } from "../../lock/profile";
import { parseProfile } from "../../lock/profileSchema";
import { explain } from "../combinationRules";
import { DrillError } from "../drillError";
import { parseRules } from "../parseRules";
import { rulesLeft } from "./rulesLeft";
import type { ChangeStation, CombinationPolicy, DialingStation, Sheet, Station, TroubleStation } from "./sheet";
import { sheetSchema } from "./sheetSchema";
import { stationProfile } from "./stationProfile";

const bad = (problem: string) => new DrillError("bad-sheet", `sheet: ${problem}`);

const repeatedId = (ids: readonly string[]) => ids.find((id, k) => ids.indexOf(id) < k);

const pathText = (path: readonly PropertyKey[]) =>
  path.map((key) => (typeof key === "number" ? `[${key}]` : `.${String(key)}`)).join("");

/** What a schema found wrong; a key it does not know is named, since the whole object would say little. */
const schemaProblem = (issues: readonly core.$ZodIssue[], value: unknown): string => {
  const issue = issues[0];
  if (issue?.code !== "unrecognized_keys") return fieldProblem(issues, value);
  const place = pathText(issue.path).replace(/^\./, "");
  return `${place === "" ? "this" : place} has a key "${issue.keys[0]}" that no sheet has there`;
};

/** Runs a check of another layer and puts the station before its sentence. */
function inStation<T>(index: number, field: string, check: () => T): T {
  try {
    return check();
  } catch (error) {
    if (error instanceof LockError || error instanceof DrillError) {
      throw bad(`stations[${index}].${field}: ${error.message}`);
    }
    throw error;
  }
}

const checkPolicy = ({ kind, combinations }: DialingStation | ChangeStation, profile: Profile): void => {
  const policy: CombinationPolicy = combinations;
  if (policy.policy === "as-set" && kind === "change") {
    throw new DrillError("bad-sheet", "a change needs a new combination; give a fixed one or let it be drawn");
  }
  if (policy.policy === "as-set" && profile.asSet === undefined) {
    throw new DrillError("bad-sheet", `${profile.id} comes without a combination; give a fixed one or let it be drawn`);
  }
  if (policy.policy === "fixed") for (const one of policy.list) parseCombination(profile, one);
  if (policy.policy === "drawn" && rulesLeft(profile, policy.rules) === "none") {
    throw new DrillError("no-combination", `the rules leave no combination for ${profile.id}; ease one of them`);
  }
};

/** The first mark that counts more tries than there are. */
const countProblem = (
  repetitions: number,
  ...marks: readonly (readonly [mark: string, verb: "asks for" | "allows", count: number | undefined])[]
): string | undefined => {
  const [mark, verb, count] = marks.find(([, , tries = 0]) => tries > repetitions) ?? [];
  return mark === undefined ? undefined : `passMarks.${mark} ${verb} ${count} of ${repetitions} tries`;
};

const dialingProblem = ({ upTo, passMarks, repetitions }: DialingStation, profile: Profile): string | undefined => {
  const wheels = profile.procedure.length;
  if (upTo !== undefined && upTo > wheels)
    return `upTo must be at most ${wheels}, the numbers of ${profile.id}, not ${upTo}`;
  const { firstTime, faultyTries } = passMarks;
  return countProblem(repetitions, ["firstTime", "asks for", firstTime], ["faultyTries", "allows", faultyTries]);
};

const isChangeable = (profile: Profile) => profile.kind === "dial-encoder" || profile.changing !== undefined;

const isSame = (one: Combination, other: Combination) => one.every((number, k) => number === other[k]);

const changeProblem = ({ combinations, passMarks, repetitions }: ChangeStation, profile: Profile) => {
  const { id, asSet, graduations } = profile;
  if (!isChangeable(profile)) return `profile: the combination of ${id} cannot be changed; take another lock`;
  if (asSet === undefined) return `profile: ${id} comes without a combination, so there is none to change from`;
  if (combinations.policy === "fixed" && combinations.list.some((one) => isSame(one, asSet))) {
    return `combinations: ${asSet.join("-")} is what ${id} is set to already; give a new one`;
  }
  const rules = (combinations.policy === "drawn" ? combinations.rules : undefined) ?? profile.combinationRules;
  const isOnly = combinations.policy === "drawn" && rulesLeft(profile, rules) === "one";
  if (isOnly && explain(asSet, rules, graduations).length === 0) {
    return `combinations: the rules leave only ${asSet.join("-")}, which is set already; ease one of them`;
  }
  const { right, faultyTries } = passMarks;
  return countProblem(repetitions, ["right", "asks for", right], ["faultyTries", "allows", faultyTries]);
};

const troubleProblem = ({ pool = [], passMarks, repetitions }: TroubleStation) => {
  const repeated = repeatedId(pool);
  if (repeated !== undefined) return `pool names ${repeated} twice`;
  return countProblem(repetitions, ["right", "asks for", passMarks.right]);
};

const stationProblem = (station: Station, profile: Profile): string | undefined => {
  const { repetitions } = station;
  switch (station.kind) {
    case "dialing":
      return dialingProblem(station, profile);
    case "zeroing":
      return countProblem(repetitions, ["zeroed", "asks for", station.passMarks.zeroed]);
    case "change":
      return changeProblem(station, profile);
    case "trouble":
      return troubleProblem(station);
    case "handover": {
      const { clean, faultyTries } = station.passMarks;
      return countProblem(repetitions, ["clean", "asks for", clean], ["faultyTries", "allows", faultyTries]);
    }
  }
};

const lateCondition = ({ conditions = [], repetitions }: Station): string | undefined => {
  const k = conditions.findIndex(({ from = 1 }) => from > repetitions);
  return k < 0 ? undefined : `conditions[${k}].from must be at most ${repetitions}, the repetitions`;
};

function checkStation(station: Station, index: number): void {
  const profile = inStation(index, "profile", () => stationProfile(station));
  if (station.kind === "dialing" || station.kind === "change") {
    inStation(index, "combinations", () => checkPolicy(station, profile));
  }
  const problem = stationProblem(station, profile) ?? lateCondition(station);
  if (problem !== undefined) throw bad(`stations[${index}].${problem}`);
}

function checkPaper({ sitting }: Sheet): void {
  const paper = sitting?.questions;
  if (paper === undefined) return;
  const repeated = repeatedId(paper.topics.map(({ topic }) => topic));
  if (repeated !== undefined) throw bad(`sitting.questions.topics names ${repeated} twice`);
  const asked = paper.topics.reduce((sum, { count }) => sum + count, 0);
  if (paper.passMark > asked) throw bad(`sitting.questions.passMark must be at most ${asked}, the questions asked`);
}

interface RawStation {
  readonly profile?: unknown;
  readonly combinations?: { readonly rules?: unknown } | null;
}

/** Whole profiles and rules are read by their own readers, which word better what is wrong with them. */
const readParts = (value: unknown): void => {
  const stations = (value as { stations?: unknown } | null)?.stations;
  if (!Array.isArray(stations)) return;
  stations.forEach((station: RawStation | null, index) => {
    const profile = station?.profile;
    if (typeof profile === "object" && profile !== null) inStation(index, "profile", () => parseProfile(profile));
    const rules = station?.combinations?.rules;
    if (rules !== undefined) inStation(index, "combinations", () => parseRules(rules));
  });
};

/**
 * Reads a drill sheet from outside.
 *
 * @param value - parsed JSON
 * @returns the sheet; whole profiles in it have their defaults filled in
 * @throws {DrillError} `bad-sheet` with a sentence that names the field
 */
export function parseSheet(value: unknown): Sheet {
  readParts(value);
  const parsed = sheetSchema.safeParse(value);
  if (!parsed.success) throw bad(schemaProblem(parsed.error.issues, value));
  const stations = parsed.data.stations.map((station) => ({
    ...station,
    profile: typeof station.profile === "string" ? station.profile : parseProfile(station.profile),
  })) as Station[];
  const sheet: Sheet = { ...parsed.data, stations };
  const ids = stations.map(({ id }) => id);
  const repeated = repeatedId(ids);
  if (repeated !== undefined) {
    throw bad(`stations[${ids.lastIndexOf(repeated)}].id: the id "${repeated}" is there twice`);
  }
  stations.forEach(checkStation);
  checkPaper(sheet);
  return sheet;
}

/**
 * What a sheet may ask but hardly means: fixed combinations that break the rules of their lock.
 *
 * @returns sentences; none for a sound sheet
 */
export function sheetDoubts({ stations }: Sheet): string[] {
  return stations.flatMap((station, index) => {
    const policy = "combinations" in station ? station.combinations : undefined;
    if (policy?.policy !== "fixed") return [];
    const { combinationRules, graduations } = stationProfile(station);
    return policy.list.flatMap((combination) =>
      explain(combination, combinationRules, graduations).map(
        ({ message, source }) => `stations[${index}]: ${combination.join("-")}: ${message} (${source})`,
      ),
    );
  });
}
