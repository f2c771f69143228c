import { useState } from "react";
import type { Profile } from "../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { LockChoice } from "../../hand/LockChoice";
import { FileButton } from "../../parts/files/FileButton";
import { FILES_GONE_WORDS } from "../../parts/page/filesGone";

/** Reads a profile; what checks it is fetched only now. */
const readProfile = (file: File) =>
  import("../../parts/files/profileFile").then(
    ({ profileFromFile }) => profileFromFile(file),
    () => FILES_GONE_WORDS,
  );

interface LockChooserProps {
  readonly profile: Profile;
  readonly onProfile: (one: Profile) => void;
  /** Why a file was not loaded, or null once one was. */
  readonly onProblem: (problem: string | null) => void;
}

/** Which lock is in hand: one of those that come with the trainer, or one from a file. */
export function LockChooser({ profile, onProfile, onProblem }: LockChooserProps) {
  const [own, setOwn] = useState<Profile | null>(null);
  const extra = [own, profile].filter((one) => one !== null && !SHIPPED_PROFILES.includes(one));
  const known = [...new Set([...SHIPPED_PROFILES, ...extra.flatMap((one) => one ?? [])])];
  const load = async (file: File) => {
    const loaded = await readProfile(file);
    onProblem(typeof loaded === "string" ? loaded : null);
    if (typeof loaded === "string") return;
    setOwn(loaded);
    onProfile(loaded);
  };
  return (
    <>
      <LockChoice locks={known} lock={profile} onLock={onProfile} />
      <FileButton accept=".json" title="Load a lock profile of your own (a JSON file)" onFile={load}>
        <span aria-hidden="true">+</span>
        <span className="visually-hidden">Load a lock profile file</span>
      </FileButton>
    </>
  );
}
