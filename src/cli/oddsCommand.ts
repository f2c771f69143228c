import { chanceOfOpening, type SimulatedOdds, simulateOdds } from "../drill/odds";
import type { Profile } from "../lock/profile";
import { seededChance } from "../statistics/chance";
import { combinationArgument } from "./combinationArgument";
import type { Command } from "./command";
import { numberOption } from "./numberOption";
import { profileArgument } from "./profileArgument";
import { UsageError } from "./usageError";

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

/** `gatefall odds` */
export const oddsCommand: Command = {
  name: "odds",
  summary: "tell how often a hand with a given bias and spread opens a lock",
  usage: `gatefall odds --profile ID --bias B --spread S [--trials N] [--seed K] [--combination 38-71-26] [--json]

The probability of opening per attempt: in closed form, and by replaying simulated attempts through the lock itself.

  --profile ID      a shipped profile, or a file whose name ends in .json
  --bias B          mean stop error, graduations, positive = runs past
  --spread S        standard deviation of the stop error, graduations
  --trials N        simulated attempts (10000)
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
    if (files.length > 0) throw new UsageError(`odds takes no file ("${files[0]}")`);
    const profile = await profileArgument(options.profile, terminal);
    const bias = numberOption(options, "bias");
    const spread = numberOption(options, "spread");
    const seed = numberOption(options, "seed", 1);
    const trials = numberOption(options, "trials", 10_000);
    const closedForm = chanceOfOpening(profile, { bias, spread });
    const combination =
      typeof options.combination === "string" ? combinationArgument(profile, options.combination) : undefined;
    const odds = simulateOdds(profile, { bias, spread }, trials, seededChance(seed), combination);
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
