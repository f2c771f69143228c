import { ordinalWord } from "../../dialing/words";
import { explain } from "../../drill/combinations/combinationRules";
import { brokenRuleText } from "../../drill/combinationWords";
import type { Combination } from "../../lock/combination";
import type { Profile } from "../../lock/profile";
import { NumberField } from "../parts/controls/NumberField";
import { Notice } from "../parts/Notice";
import { readOwn } from "./readOwn";

function RuleNotes({ profile, numbers }: { readonly profile: Profile; readonly numbers: Combination }) {
  const broken = explain(numbers, profile.combinationRules, profile.graduations);
  if (broken.length === 0) return <p className="text-soft">This combination follows every rule for this lock.</p>;
  return (
    <div className="text-soft">
      <p>You can practice with it. For a real door, choose another:</p>
      <ul>
        {broken.map((one) => (
          <li key={one.rule}>{brokenRuleText(one)}</li>
        ))}
      </ul>
    </div>
  );
}

interface OwnNumbersProps {
  readonly profile: Profile;
  readonly typed: readonly (number | undefined)[];
  readonly onTyped: (typed: readonly (number | undefined)[]) => void;
}

/** Fields for numbers of one's own. The rules they break are shown, with their source. */
export function OwnNumbers({ profile, typed, onTyped }: OwnNumbersProps) {
  const own = readOwn(profile, typed);
  return (
    <>
      <div className="row mt-4">
        {typed.map((number, k) => (
          <NumberField
            key={`${ordinalWord(k + 1)}`}
            label={`${ordinalWord(k + 1)} number`}
            looks={{ label: "visually-hidden" }}
            size={4}
            value={number}
            onNumber={(next) => onTyped(typed.with(k, next))}
          />
        ))}
      </div>
      {"problem" in own ? <Notice>{own.problem}</Notice> : <RuleNotes profile={profile} numbers={own.numbers} />}
    </>
  );
}
