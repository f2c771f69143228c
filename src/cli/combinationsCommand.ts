import { type BrokenRule, explain } from "../drill/combinations/combinationRules";
import { countCombinations } from "../drill/combinations/countCombinations";
import { combinationDrawer } from "../drill/combinations/drawCombination";
import { parseRules } from "../drill/combinations/parseRules";
import { brokenRuleText, COMBINATION_WORDS } from "../drill/combinationWords";
import type { Combination } from "../lock/combination";
import type { CombinationRules, Profile } from "../lock/profile";
import { seededChance } from "../statistics/chance";
import { countText } from "../wording/amountWords";
import { wordsOf } from "../wording/problem";
import { combinationArgument } from "./combinationArgument";
import { wholeOption } from "./numberOption";
import { profileArgument } from "./profileArgument";
import type { Command, OptionValues, Terminal } from "./terminal/command";
import { jsonFile } from "./terminal/jsonFile";
import { usageError } from "./terminal/usageError";

/** What one of the three actions works on. */
interface Task {
  readonly profile: Profile;
  readonly rules: CombinationRules;
  readonly options: OptionValues;
  /** Arguments after the action's name. */
  readonly rest: readonly string[];
}

/** An action: its text for people, and its object for `--json`. */
type Action = (task: Task) => { readonly text: string; readonly json: object };

const grouped = (count: number) => count.toLocaleString("en-US");

const takesNothing = (action: string, [extra]: readonly string[]) => {
  if (extra !== undefined) throw usageError("no-argument", [], { command: `combinations ${action}`, given: extra });
};

const count: Action = ({ profile, rules, rest }) => {
  takesNothing("count", rest);
  const allowed = countCombinations(profile, rules);
  const all = profile.graduations ** profile.procedure.length;
  return {
    json: { count: allowed },
    text: `${profile.title}: the rules allow ${grouped(allowed)} of ${grouped(all)} combinations\n`,
  };
};

const draw: Action = ({ profile, rules, options, rest }) => {
  takesNothing("draw", rest);
  const seed = wholeOption(options, "seed", { least: -(2 ** 31), most: 2 ** 32 - 1, otherwise: 1 });
  const wanted = wholeOption(options, "number-of", { least: 1, most: 100_000, otherwise: 1 });
  const chance = seededChance(seed);
  const next = combinationDrawer(profile, rules);
  const combinations = Array.from({ length: wanted }, () => next(chance));
  return {
    json: { profile: profile.id, seed, combinations },
    text: combinations.map((one) => `${one.join("-")}\n`).join(""),
  };
};

const explanation = (combination: Combination, broken: readonly BrokenRule[]): string => {
  const name = combination.join("-");
  if (broken.length === 0) return `${name} keeps every rule\n`;
  const lines = broken.map((one) => `  ${one.rule}: ${brokenRuleText(one)}\n`);
  return `${name} breaks ${countText(broken.length, "rule")}\n${lines.join("")}`;
};

const explainOne: Action = ({ profile, rules, rest: [text, ...more] }) => {
  if (text === undefined || more.length > 0) {
    throw usageError("one-combination", [], { command: "combinations explain", example: "38-71-26" });
  }
  const combination = combinationArgument(profile, text);
  const broken = explain(combination, rules, profile.graduations);
  return {
    json: {
      combination,
      allowed: broken.length === 0,
      broken: broken.map(({ rule, problem, source }) => ({
        rule,
        message: wordsOf(problem, COMBINATION_WORDS),
        source,
      })),
    },
    text: explanation(combination, broken),
  };
};

const ACTIONS: Readonly<Record<string, Action>> = { count, draw, explain: explainOne };

const actionNamed = (name: string | undefined): Action => {
  const action = name !== undefined && Object.hasOwn(ACTIONS, name) ? ACTIONS[name] : undefined;
  if (action !== undefined) return action;
  const command = "combinations";
  if (name === undefined) throw usageError("action-needed", [], { command, actions: "count, draw or explain" });
  throw usageError("action-unknown", [], { command, action: name, actions: "count, draw and explain" });
};

const rulesFrom = async (options: OptionValues, profile: Profile, terminal: Terminal): Promise<CombinationRules> =>
  typeof options.rules === "string" ? parseRules(await jsonFile(options.rules, terminal)) : profile.combinationRules;

/** `gatefall combinations count|draw|explain` */
export const combinationsCommand: Command = {
  usage: `gatefall combinations count   --profile ID [--rules FILE] [--json]
gatefall combinations draw    --profile ID [--rules FILE] [--seed K] [--number-of N] [--json]
gatefall combinations explain --profile ID [--rules FILE] [--json] 38-71-26

count shows exactly how many combinations the rules allow; draw gives some, each as likely as any other; explain
lists every rule that a combination breaks, with its source.

  --profile ID     a shipped profile, or a file whose name ends in .json
  --rules FILE     a JSON file of rules; without it the profile's own rules apply. {} means no rules:
                   {"minSeparation":5,"circular":true,"excludedLast":[[0,20],[85,99]],"noStraight":true,
                    "notAllEven":true,"notAllOdd":true,"multiplesOfTen":"numbers","oneFromEachThird":false,
                    "excluded":[13,[40,49]]}
                   minSeparation applies between every two numbers (circular: the shorter way round the dial);
                   multiplesOfTen is "numbers" or "differences"; excluded numbers are allowed nowhere
  --seed K         seed of the drawing (1)
  --number-of N    how many to draw (1)
  --json           print JSON: {"count":N}, {"combinations":[..]} or {"allowed":..,"broken":[..]}`,
  options: {
    profile: { type: "string" },
    rules: { type: "string" },
    seed: { type: "string" },
    "number-of": { type: "string" },
    json: { type: "boolean" },
  },
  async run([name, ...rest], options, terminal) {
    const action = actionNamed(name);
    const profile = await profileArgument(options.profile, terminal);
    const rules = await rulesFrom(options, profile, terminal);
    const { text, json } = action({ profile, rules, options, rest });
    await terminal.write(options.json === true ? `${JSON.stringify(json)}\n` : text);
    return 0;
  },
};
