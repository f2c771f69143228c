import { chanceOfOpening, type Hand, type SimulatedOdds, simulateOdds } from "../drill/combinations/odds";
import type { Combination } from "../lock/combination";
import type { Profile } from "../lock/profile";
import { type Chance, seededChance } from "../statistics/chance";
import { combinationArgument } from "./combinationArgument";
import { numberOption } from "./numberOption";
import { profileArgument } from "./profileArgument";
import type { Command, Terminal } from "./terminal/command";
import { usageError } from "./terminal/usageError";

const percent = (probability: number) => `${(100 * probability).toFixed(2)} %`;

const inWords = (
  profile: Profile,
  bias: number,
  spread: number,
  closedForm: number,
  odds: SimulatedOdds,
  seed: number,
) =>
  `${profile.title}: stop errors with bias ${bias} and spread ${spread} graduations
  closed form   ${percent(closedForm)} of attempts open
  simulated     ${percent(odds.probability)} +- ${percent(odds.standardError)} (standard error), ${odds.opened} of ${odds.trials}, seed ${seed}
`;

/** Some minutes' worth. */
const MOST_TRIALS = 10_000_000;
/** Attempts between two looks up from the work: progress is shown, and an interruption heard. */
const SLICE = 20_000;

/** Simulates in slices; the attempts are the same as in one go. */
async function simulated(
  profile: Profile,
  hand: Hand,
  trials: number,
  chance: Chance,
  combination: Combination | undefined,
  terminal: Terminal,
): Promise<SimulatedOdds> {
  let opened = 0;
  let done = 0;
  do {
    opened += simulateOdds(profile, hand, Math.min(SLICE, trials - done), chance, combination).opened;
    done += SLICE;
    if (done < trials) terminal.progress(`${done} of ${trials} attempts simulated`);
    await new Promise((resume) => setImmediate(resume));
  } while (done < trials);
  const probability = opened / trials;
  return { trials, opened, probability, standardError: Math.sqrt((probability * (1 - probability)) / trials) };
}

/** `gatefall odds` */
export const oddsCommand: Command = {
  usage: `gatefall odds --profile ID --bias B --spread S [--trials N] [--seed K] [--combination 38-71-26] [--json]

The probability of opening per attempt: in closed form, and by replaying simulated attempts through the lock itself.

  --profile ID      a shipped profile, or a file whose name ends in .json
  --bias B          mean stop error, graduations, positive = runs past
  --spread S        standard deviation of the stop error, graduations
  --trials N        simulated attempts, at most 10000000 (10000); a long simulation shows its progress, and Ctrl-C ends it
  --seed K          seed of the simulation (1)
  --combination C   dial this one every time; else each attempt draws one by the profile's rules
  --json            print JSON`,
  options: {
    profile: { type: "string" },
    bias: { type: "string" },
    spread: { type: "string" },
    trials: { type: "string" },
    seed: { type: "string" },
    combination: { type: "string" },
    json: { type: "boolean" },
  },
  async run(files, options, terminal) {
    if (files.length > 0) throw usageError("no-file", [], { command: "odds", given: files[0] });
    const profile = await profileArgument(options.profile, terminal);
    const bias = numberOption(options, "bias");
    const spread = numberOption(options, "spread");
    const seed = numberOption(options, "seed", 1);
    const trials = numberOption(options, "trials", 10_000);
    if (trials > MOST_TRIALS) throw usageError("at-most", ["--trials"], { most: MOST_TRIALS, found: trials });
    const closedForm = chanceOfOpening(profile, { bias, spread });
    const combination =
      typeof options.combination === "string" ? combinationArgument(profile, options.combination) : undefined;
    const odds = await simulated(profile, { bias, spread }, trials, seededChance(seed), combination, terminal);
    const result = {
      profile: profile.id,
      bias,
      spread,
      closedForm,
      simulated: odds.probability,
      standardError: odds.standardError,
      opened: odds.opened,
      trials,
      seed,
    };
    await terminal.write(
      options.json === true ? `${JSON.stringify(result)}\n` : inWords(profile, bias, spread, closedForm, odds, seed),
    );
    return 0;
  },
};
