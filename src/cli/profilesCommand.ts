import { LockError } from "../lock/lockError";
import { LOCK_WORDS } from "../lock/lockWords";
import type { Profile } from "../lock/profile";
import { profileDoubts } from "../lock/profileSchema";
import { SHIPPED_PROFILES } from "../lock/shippedProfiles";
import { problemText } from "../wording/problem";
import { readProfileFile } from "./profileArgument";
import type { Command, Terminal } from "./terminal/command";
import { UsageError } from "./terminal/usageError";

/** A profile that was looked at: sound, or with a problem. */
interface Checked {
  readonly id: string;
  readonly title?: string;
  readonly kind?: string;
  readonly procedure?: string;
  readonly valid: boolean;
  readonly doubts?: readonly string[];
  readonly error?: string;
}

const procedureText = ({ procedure, draw }: Profile) => {
  const steps = procedure.map(({ turn, arrivals, rule }) => `${turn} ${rule === "at-least" ? ">=" : ""}${arrivals}`);
  return [...steps, `draw ${draw.turn}`].join(", ");
};

const sound = (profile: Profile): Checked => ({
  id: profile.id,
  title: profile.title,
  kind: profile.kind,
  procedure: procedureText(profile),
  valid: true,
  doubts: profileDoubts(profile).map((doubt) => problemText(doubt, LOCK_WORDS)),
});

async function checkFile(file: string, terminal: Terminal): Promise<Checked> {
  try {
    return sound(await readProfileFile(file, terminal));
  } catch (error) {
    if (error instanceof LockError || error instanceof UsageError)
      return { id: file, valid: false, error: error.message };
    throw error;
  }
}

const line = (checked: Checked): string => {
  if (!checked.valid) return `${checked.id}\n  not valid: ${checked.error}\n`;
  const doubts = (checked.doubts ?? []).map((doubt) => `  doubtful: ${doubt}\n`).join("");
  return `${checked.id}\n  ${checked.title} (${checked.kind})\n  ${checked.procedure}\n${doubts}`;
};

/** `gatefall profiles [FILE ...]` */
export const profilesCommand: Command = {
  usage: `gatefall profiles [--json] [FILE ...]

Without files it lists the shipped profiles. With files it checks each; a bad one gets a sentence that names the
field, and the exit status is 1.

  --json   one JSON object a line`,
  options: { json: { type: "boolean" } },
  async run(files, { json }, terminal) {
    const checked =
      files.length === 0
        ? SHIPPED_PROFILES.map(sound)
        : await Promise.all(files.map((file) => checkFile(file, terminal)));
    for (const one of checked) await terminal.write(json === true ? `${JSON.stringify(one)}\n` : line(one));
    return checked.every(({ valid }) => valid) ? 0 : 1;
  },
};
