import { useState } from "react";
import type { Help } from "../../dialing/advice";
import { faceText } from "../../dialing/words";
import type { Profile } from "../../lock/profile";
import { parseProfile } from "../../lock/profileSchema";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { BenchSetup } from "./benchSetup";
import { HelpChoice } from "./HelpChoice";

const SOURCE_WORDS: Readonly<Record<BenchSetup["source"], string>> = { "as-set": "as set", drawn: "drawn", own: "own" };

interface SetupBarProps {
  readonly setup: BenchSetup;
  readonly onProfile: (profile: Profile) => void;
  readonly onHelp: (help: Help) => void;
  readonly onCombination: () => void;
  readonly onShare: () => void;
}

/** Reads a profile file of the user's own; a bad one leaves the lock alone and is told in a sentence. */
async function readProfile(file: File): Promise<Profile | string> {
  try {
    return parseProfile(JSON.parse(await file.text()));
  } catch (error) {
    const message = error instanceof Error ? error.message.replace(/^profile: /, "") : String(error);
    return `${file.name} is not loaded: ${message}.`;
  }
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
  const load = async (file: File | undefined) => {
    if (file === undefined) return;
    const loaded = await readProfile(file);
    setProblem(typeof loaded === "string" ? loaded : null);
    if (typeof loaded === "string") return;
    setOwn(loaded);
    onProfile(loaded);
  };
  return (
    <>
      <select
        className="field"
        aria-label="Lock"
        value={known.indexOf(profile)}
        onChange={(event) => onProfile(known[Number(event.currentTarget.value)] ?? profile)}
      >
        {known.map((one, index) => (
          <option key={`${one.id}-${index < SHIPPED_PROFILES.length ? "shipped" : index}`} value={index}>
            {one.title}
          </option>
        ))}
      </select>
      <label className="button setup-file" title="Load a lock profile of your own (JSON)">
        <span aria-hidden="true">+</span>
        <span className="visually-hidden">Load a lock profile file</span>
        <input
          type="file"
          className="visually-hidden"
          accept=".json"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            // The same file may be chosen again once it has been mended.
            event.currentTarget.value = "";
            load(file);
          }}
        />
      </label>
      {problem !== null && (
        <p className="setup-problem" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}

/** Which lock, which combination, how much help; and the way to share. */
export function SetupBar({ setup, onProfile, onHelp, onCombination, onShare }: SetupBarProps) {
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
      <button type="button" className="button" aria-haspopup="dialog" onClick={onShare}>
        Share
      </button>
    </div>
  );
}
