import type { Profile } from "../../lock/profile";
import type { Skill } from "../../records/skill";
import { shortTitle } from "./attemptRows";
import { JOB_WORDS } from "./jobWords";

const JOB_NAMES: ReadonlyMap<string, string> = new Map(
  Object.entries(JOB_WORDS).map(([kind, name]) => [kind, name.toLowerCase()]),
);

/** A skill in words: "Three-wheel, open", "Three-wheel, service visit". @param profile - null where it is not known here */
export const skillTitle = (profile: Profile | null, { profileId, exercise }: Skill): string =>
  `${shortTitle(profile, profileId)}, ${JOB_NAMES.get(exercise) ?? exercise}`;
