import { useState } from "react";
import type { Help } from "../../dialing/advice";
import { faceText } from "../../dialing/words";
import type { Profile } from "../../lock/profile";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import { FileButton } from "../shell/FileButton";
import { LockChoice } from "../shell/LockChoice";
import { profileFromFile } from "../shell/profileFile";
import type { BenchSetup } from "./benchSetup";
import { HelpChoice } from "./HelpChoice";

const SOURCE_WORDS: Readonly<Record<BenchSetup["source"], string>> = { "as-set": "as set", drawn: "drawn", own: "own" };

interface SetupBarProps {
  readonly setup: BenchSetup;
  readonly onProfile: (profile: Profile) => void;
  readonly onHelp: (help: Help) => void;
  /** Whether an own estimate is asked for. */
  readonly asksEstimate: boolean;
  readonly onCombination: () => void;
  readonly onMore: () => void;
}

function LockChooser({
  profile,
  onProfile,
}: {
  readonly profile: Profile;
  readonly onProfile: (one: Profile) => void;
}) {
  const [own, setOwn] = useState<Profile | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const extra = [own, profile].filter((one) => one !== null && !SHIPPED_PROFILES.includes(one));
  const known = [...new Set([...SHIPPED_PROFILES, ...extra.flatMap((one) => one ?? [])])];
  const load = async (file: File) => {
    const loaded = await profileFromFile(file);
    setProblem(typeof loaded === "string" ? loaded : null);
    if (typeof loaded === "string") return;
    setOwn(loaded);
    onProfile(loaded);
  };
  return (
    <>
      <LockChoice locks={known} lock={profile} onLock={onProfile} />
      <FileButton accept=".json" title="Load a lock profile of your own (JSON)" onFile={load}>
        <span aria-hidden="true">+</span>
        <span className="visually-hidden">Load a lock profile file</span>
      </FileButton>
      {problem !== null && (
        <p className="setup-problem" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}

/** What of the further settings is not as usual, so that nobody wonders. */
const unusual = ({ setup, asksEstimate }: SetupBarProps) => [
  ...(setup.dial === "usual" ? [] : [setup.dial]),
  ...(asksEstimate ? ["asks"] : []),
];

/** Which lock, which combination, how much help; and the way to what is set more seldom. */
export function SetupBar(props: SetupBarProps) {
  const { setup, onProfile, onHelp, onCombination, onMore } = props;
  const { profile, combination } = setup;
  const numbers = combination.map((number) => faceText(number, profile)).join("–");
  return (
    <div className="setup">
      <LockChooser profile={profile} onProfile={onProfile} />
      <button type="button" className="button" aria-haspopup="dialog" onClick={onCombination}>
        <span className="visually-hidden">Combination </span>
        {numbers} <small>{SOURCE_WORDS[setup.source]}</small>
      </button>
      <HelpChoice help={setup.help} onHelp={onHelp} />
      <button
        type="button"
        className="button"
        aria-haspopup="dialog"
        title="How the dial turns, and your own estimate"
        onClick={onMore}
      >
        More <small>{unusual(props).join(", ")}</small>
      </button>
    </div>
  );
}
