import type { Help } from "../../../dialing/advice";
import { faceText } from "../../../dialing/words";
import type { Profile } from "../../../lock/profile";
import { HelpChoice } from "../../hand/HelpChoice";
import { Button } from "../../parts/controls/Button";
import type { BenchSetup } from "./benchSetup";
import { LockChooser } from "./LockChooser";

const SOURCE_WORDS: Readonly<Record<BenchSetup["source"], string>> = {
  "as-set": "as set",
  drawn: "drawn",
  own: "your own",
};

interface SetupBarProps {
  readonly setup: BenchSetup;
  readonly onProfile: (profile: Profile) => void;
  readonly onHelp: (help: Help) => void;
  /** Whether an own estimate is asked for. */
  readonly asksEstimate: boolean;
  readonly onCombination: () => void;
  readonly onMore: () => void;
  readonly onFileProblem: (problem: string | null) => void;
}

/** What of the further settings is not as usual, so that it is seen. */
const unusual = ({ setup, asksEstimate }: SetupBarProps) => [
  ...(setup.dial === "usual" ? [] : [setup.dial]),
  ...(asksEstimate ? ["asks you"] : []),
];

/** Which lock, which combination, how much help; and the way to what is changed less often. */
export function SetupBar(props: SetupBarProps) {
  const { setup, onProfile, onHelp, onCombination, onMore } = props;
  const { profile, combination } = setup;
  const numbers = combination.map((number) => faceText(number, profile)).join("–");
  return (
    <div className="setup">
      <LockChooser profile={profile} onProfile={onProfile} onProblem={props.onFileProblem} />
      <Button aria-haspopup="dialog" onClick={onCombination}>
        <span className="visually-hidden">Combination </span>
        {numbers} <small>{SOURCE_WORDS[setup.source]}</small>
      </Button>
      <HelpChoice help={setup.help} onHelp={onHelp} />
      <Button aria-haspopup="dialog" title="How the dial turns, your own estimate, and the keys" onClick={onMore}>
        More <small>{unusual(props).join(", ")}</small>
      </Button>
    </div>
  );
}
