import type { ChangeStation, CombinationPolicy, DialingStation } from "../../../drill/sheet/sheet";
import type { CombinationRules, Profile } from "../../../lock/profile";
import { knownProfile } from "../../results/sheetWords";
import { AllowedCount } from "./AllowedCount";
import { CheckField, ChoiceField, LinesField, NumberField } from "./fields";
import { listText, parseList } from "./fixedList";
import { parseRanges, parseWholeRanges, rangesText } from "./ranges";
import type { StationEdit } from "./stationEdit";

const POLICIES = [
  ["drawn", "Drawn by the rules of the lock"],
  ["own-rules", "Drawn by rules of this sheet"],
  ["as-set", "The one the lock comes with"],
  ["fixed", "From my own list"],
] as const;
type PolicyChoice = (typeof POLICIES)[number][0];

const choiceOf = (policy: CombinationPolicy): PolicyChoice =>
  policy.policy === "drawn" && policy.rules !== undefined ? "own-rules" : policy.policy;

const policyOf = (choice: PolicyChoice, profile: Profile | null, kind: "dialing" | "change"): CombinationPolicy => {
  if (choice === "as-set") return { policy: "as-set" };
  if (choice === "fixed") {
    const isGiven = kind === "dialing" && profile?.asSet !== undefined;
    return { policy: "fixed", list: isGiven ? [profile.asSet] : [] };
  }
  return choice === "drawn" ? { policy: "drawn" } : { policy: "drawn", rules: profile?.combinationRules ?? {} };
};

const FLAGS = [
  ["circular", "Measure the distance the shorter way round the dial"],
  ["noStraight", "Not all rising, not all falling"],
  ["notAllEven", "Not all even"],
  ["notAllOdd", "Not all odd"],
  ["oneFromEachThird", "One number from each third"],
] as const satisfies (readonly [keyof CombinationRules, string])[];

const TENS = [
  ["none", "Allowed"],
  ["numbers", "None among the numbers"],
  ["differences", "None among the differences"],
] as const;

function RuleFields({
  rules,
  path,
  onRules,
}: {
  readonly rules: CombinationRules;
  readonly path: string;
  readonly onRules: (rules: CombinationRules, field: string) => void;
}) {
  return (
    <fieldset className="sheets-part tiles-[210px] phone:tiles-[140px] col-span-full items-start phone:items-end gap-x-5 gap-y-4 mt-4 pt-3 ruled">
      <legend>Rules of this sheet</legend>
      <NumberField
        label="Least distance between numbers, graduations"
        path={`${path}.rules`}
        value={rules.minSeparation}
        onNumber={(minSeparation) => onRules({ ...rules, minSeparation }, "minSeparation")}
      />
      <ChoiceField
        label="Multiples of ten"
        path={`${path}.rules.multiplesOfTen`}
        value={rules.multiplesOfTen ?? "none"}
        choices={TENS}
        onChoice={(tens) => onRules({ ...rules, multiplesOfTen: tens === "none" ? undefined : tens }, "multiplesOfTen")}
      />
      <LinesField
        label="Ranges that the last number is never in, such as 0-20, 85-99"
        path={`${path}.rules.excludedLast`}
        value={rules.excludedLast}
        write={rangesText}
        read={parseWholeRanges}
        onValue={(excludedLast) => onRules({ ...rules, excludedLast }, "excludedLast")}
      />
      <LinesField
        label="Numbers never used, such as 13, 50-59"
        path={`${path}.rules.excluded`}
        value={rules.excluded}
        write={rangesText}
        read={parseRanges}
        onValue={(excluded) => onRules({ ...rules, excluded }, "excluded")}
      />
      {FLAGS.map(([rule, label]) => (
        <CheckField
          key={rule}
          label={label}
          value={rules[rule] ?? false}
          onCheck={(isAsked) => onRules({ ...rules, [rule]: isAsked || undefined }, rule)}
        />
      ))}
    </fieldset>
  );
}

const EACH = [
  ["try", "For every try"],
  ["station", "Once for the station"],
] as const;

/** Where a station's combinations come from. A change takes none that the lock has already. */
export function PolicyFields({ station, path, onFields }: StationEdit<DialingStation | ChangeStation>) {
  const { kind } = station;
  const combinations: CombinationPolicy = station.combinations;
  const choices = POLICIES.filter(([choice]) => kind === "dialing" || choice !== "as-set");
  const profile = knownProfile(station);
  const at = `${path}.combinations`;
  const take = (policy: CombinationPolicy, field: string) =>
    onFields({ combinations: policy } as Partial<DialingStation | ChangeStation>, field);
  return (
    <>
      <ChoiceField
        label={kind === "change" ? "New combinations" : "Combinations"}
        path={at}
        hasFields
        value={choiceOf(combinations)}
        choices={choices}
        onChoice={(choice) => take(policyOf(choice, profile, kind), "policy")}
      />
      {combinations.policy === "drawn" && (
        <ChoiceField
          label="A new one is drawn"
          path={`${at}.each`}
          value={combinations.each ?? "try"}
          choices={EACH}
          onChoice={(each) => take({ ...combinations, each }, "each")}
        />
      )}
      {combinations.policy === "drawn" && combinations.rules !== undefined && (
        <RuleFields
          rules={combinations.rules}
          path={at}
          onRules={(rules, field) => take({ ...combinations, rules }, field)}
        />
      )}
      {combinations.policy === "drawn" && profile !== null && (
        <AllowedCount profile={profile} rules={combinations.rules ?? profile.combinationRules} />
      )}
      {combinations.policy === "fixed" && (
        <LinesField
          label="Combinations, one a line, such as 38-71-26"
          path={`${at}.list`}
          value={combinations.list}
          write={(list) => listText(list, profile)}
          read={(text) => parseList(text, profile)}
          onValue={(list) => take({ policy: "fixed", list }, "list")}
        />
      )}
    </>
  );
}
