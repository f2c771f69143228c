import { type Combination, combinationProblem } from "../../lock/combination";
import { fieldProblem } from "../../lock/fieldProblem";
import type { Profile } from "../../lock/profile";
import { parseProfile } from "../../lock/profileSchema";
import { type Path, type Problem, ProblemError, under } from "../../wording/problem";
import { explain } from "../combinations/combinationRules";
import { parseRules } from "../combinations/parseRules";
import { drillProblem } from "../drillWords";
import { SheetError } from "../sheetError";
import { rulesLeft } from "./rulesLeft";
import type { ChangeStation, CombinationPolicy, DialingStation, Sheet, Station, TroubleStation } from "./sheet";
import { sheetSchema } from "./sheetSchema";
import { stationProfile } from "./stationProfile";

type Misfit = Problem | null | undefined;

const bad = (problem: Problem) => new SheetError(problem, "sheet");

const repeatedId = (ids: readonly string[]) => ids.find((id, k) => ids.indexOf(id) < k);

/** Runs a check of another layer and puts its problem in its place of the sheet. */
function inSheet<T>(path: Path, check: () => T): T {
  try {
    return check();
  } catch (error) {
    if (error instanceof ProblemError) throw bad(under(path, error.problem));
    throw error;
  }
}

const policyProblem = ({ kind, combinations }: DialingStation | ChangeStation, profile: Profile): Misfit => {
  const policy: CombinationPolicy = combinations;
  const path = ["combinations"];
  if (policy.policy === "as-set") {
    if (kind === "change") return drillProblem("change-without-new", path);
    return profile.asSet === undefined ? drillProblem("no-combination-set", path, { lock: profile.id }) : null;
  }
  if (policy.policy === "drawn") {
    const isNone = rulesLeft(profile, policy.rules) === "none";
    return isNone ? drillProblem("no-combination", path, { lock: profile.id }) : null;
  }
  const problems = policy.list.flatMap((one, k) => {
    const problem = combinationProblem(profile, one);
    return problem === null ? [] : [under([...path, "list", k], problem)];
  });
  return problems[0];
};

/** The first mark that counts more tries than there are. */
const countProblem = (
  repetitions: number,
  ...marks: readonly (readonly [mark: string, code: "asks-too-many" | "allows-too-many", count: number | undefined])[]
): Misfit => {
  const [mark, code, count] = marks.find(([, , tries = 0]) => tries > repetitions) ?? [];
  if (mark === undefined || code === undefined) return undefined;
  return drillProblem(code, ["passMarks", mark], { count, repetitions });
};

const dialingProblem = ({ upTo, passMarks, repetitions }: DialingStation, profile: Profile): Misfit => {
  const most = profile.procedure.length;
  if (upTo !== undefined && upTo > most)
    return drillProblem("more-than-numbers", ["upTo"], { most, lock: profile.id, found: upTo });
  const { firstTime, faultyTries } = passMarks;
  return countProblem(
    repetitions,
    ["firstTime", "asks-too-many", firstTime],
    ["faultyTries", "allows-too-many", faultyTries],
  );
};

const isChangeable = (profile: Profile) => profile.kind === "dial-encoder" || profile.changing !== undefined;

const isSame = (one: Combination, other: Combination) => one.every((number, k) => number === other[k]);

const changeProblem = ({ combinations, passMarks, repetitions }: ChangeStation, profile: Profile): Misfit => {
  const { id: lock, asSet, graduations } = profile;
  if (!isChangeable(profile)) return drillProblem("unchangeable-lock", ["profile"], { lock });
  if (asSet === undefined) return drillProblem("nothing-to-change", ["profile"], { lock });
  if (combinations.policy === "fixed" && combinations.list.some((one) => isSame(one, asSet))) {
    return drillProblem("same-combination", ["combinations"], { combination: asSet, lock });
  }
  const rules = (combinations.policy === "drawn" ? combinations.rules : undefined) ?? profile.combinationRules;
  const isOnly = combinations.policy === "drawn" && rulesLeft(profile, rules) === "one";
  if (isOnly && explain(asSet, rules, graduations).length === 0) {
    return drillProblem("only-combination", ["combinations"], { combination: asSet });
  }
  const { right, faultyTries } = passMarks;
  return countProblem(repetitions, ["right", "asks-too-many", right], ["faultyTries", "allows-too-many", faultyTries]);
};

const troubleProblem = ({ pool = [], passMarks, repetitions }: TroubleStation): Misfit => {
  const name = repeatedId(pool);
  if (name !== undefined) return drillProblem("named-twice", ["pool"], { name });
  return countProblem(repetitions, ["right", "asks-too-many", passMarks.right]);
};

const kindProblem = (station: Station, profile: Profile): Misfit => {
  const { repetitions } = station;
  switch (station.kind) {
    case "dialing":
      return policyProblem(station, profile) ?? dialingProblem(station, profile);
    case "zeroing":
      return countProblem(repetitions, ["zeroed", "asks-too-many", station.passMarks.zeroed]);
    case "change":
      return policyProblem(station, profile) ?? changeProblem(station, profile);
    case "trouble":
      return troubleProblem(station);
    case "fitting":
    case "service":
    case "inspection":
      return countProblem(repetitions, ["right", "asks-too-many", station.passMarks.right]);
    case "handover": {
      const { clean, faultyTries } = station.passMarks;
      return countProblem(
        repetitions,
        ["clean", "asks-too-many", clean],
        ["faultyTries", "allows-too-many", faultyTries],
      );
    }
  }
};

const lateCondition = ({ conditions = [], repetitions }: Station): Misfit => {
  const k = conditions.findIndex(({ from = 1 }) => from > repetitions);
  return k < 0 ? null : drillProblem("late-condition", ["conditions", k, "from"], { repetitions });
};

function checkStation(station: Station, index: number): void {
  const place = ["stations", index];
  const profile = inSheet([...place, "profile"], () => stationProfile(station));
  const problem = inSheet([...place, "combinations"], () => kindProblem(station, profile)) ?? lateCondition(station);
  if (problem) throw bad(under(place, problem));
}

function checkPaper({ sitting }: Sheet): void {
  const paper = sitting?.questions;
  if (paper === undefined) return;
  const place = ["sitting", "questions"];
  const name = repeatedId(paper.topics.map(({ topic }) => topic));
  if (name !== undefined) throw bad(drillProblem("named-twice", [...place, "topics"], { name }));
  const asked = paper.topics.reduce((sum, { count }) => sum + count, 0);
  if (paper.passMark > asked) throw bad(drillProblem("pass-mark-too-high", [...place, "passMark"], { asked }));
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
    const place = ["stations", index];
    const profile = station?.profile;
    if (typeof profile === "object" && profile !== null) inSheet([...place, "profile"], () => parseProfile(profile));
    const rules = station?.combinations?.rules;
    if (rules !== undefined) inSheet([...place, "combinations", "rules"], () => parseRules(rules));
  });
};

/**
 * Reads a drill sheet from outside.
 *
 * @param value - parsed JSON
 * @returns the sheet; whole profiles in it have their defaults filled in
 * @throws {SheetError} naming the field
 */
export function parseSheet(value: unknown): Sheet {
  readParts(value);
  const parsed = sheetSchema.safeParse(value);
  if (!parsed.success) throw bad(fieldProblem(parsed.error.issues, value));
  const stations = parsed.data.stations.map((station) => ({
    ...station,
    profile: typeof station.profile === "string" ? station.profile : parseProfile(station.profile),
  })) as Station[];
  const sheet: Sheet = { ...parsed.data, stations };
  const ids = stations.map(({ id }) => id);
  const repeated = repeatedId(ids);
  if (repeated !== undefined) {
    throw bad(drillProblem("same-id", ["stations", ids.lastIndexOf(repeated), "id"], { id: repeated }));
  }
  stations.forEach(checkStation);
  checkPaper(sheet);
  return sheet;
}

/** What a sheet may ask but hardly means: fixed combinations that break the rules of their lock. */
export function sheetDoubts({ stations }: Sheet): Problem[] {
  return stations.flatMap((station, index) => {
    const policy = "combinations" in station ? station.combinations : undefined;
    if (policy?.policy !== "fixed") return [];
    const { combinationRules, graduations } = stationProfile(station);
    return policy.list.flatMap((combination) =>
      explain(combination, combinationRules, graduations).map(({ problem, source }) =>
        drillProblem("broken-rule", ["stations", index], { combination, rule: problem, source }),
      ),
    );
  });
}
