import clean from "../../shared/handovers/clean.json" with { type: "json" };
import lockedOut from "../../shared/handovers/locked-out.json" with { type: "json" };
import type { Chance } from "../../src/statistics/chance";
import { spawnedCli, unseemly } from "./spawnedCli";
import { copyOf, type Json, pick, placeText, spoil, spoiledText, valueAt } from "./tamper";
import type { Trial } from "./trial";

/*
 * Whatever comes in on the command line: no stack trace, an exit status of those that the help names, a word on every
 * bad line, the good lines after it still answered, and all in little memory (`spawnedCli`).
 */

const GOOD: Json = { profile: "three-wheel", combination: [38, 71, 26], positions: [0, 338, 71, 226, 190] };

const JUNK: readonly ((chance: Chance) => string)[] = [
  (chance) => "[{".repeat(Math.floor(40_000 * chance())),
  (chance) => "1".repeat(Math.floor(1_000_000 * chance())),
  (chance) => String.fromCharCode(...Array.from({ length: 40 }, () => 32 + Math.floor(60_000 * chance()))),
  () => '{"profile":"three-wheel","profile":null}',
  () => '{"__proto__":{"profile":"three-wheel"},"constructor":1}',
  () => "\0\u2028\ud800",
  () => '{"positions":[1e308,-1e308,1e999]}',
  () => '{"profile":{"id":"x","procedure":[]},"combination":[],"positions":[0]}',
  () => "right,1e400\u200b",
  (chance) => `right,${"1".repeat(Math.floor(100_000 * chance()))}x`,
  () => "left,-0.1,,,,",
];

/** A line that was good, with one place changed. */
const spoiled = (chance: Chance) => spoiledText(GOOD, chance);

const badLine = (chance: Chance) =>
  (chance() < 0.3 ? pick(chance, JUNK)(chance) : spoiled(chance)).replaceAll(/[\r\n]/g, " ").trim() || "?";

type Round = (chance: Chance) => Promise<string | null>;

/** Every line is answered in its place, the good one at the end among them. */
const replayLines: Round = async (chance) => {
  const lines = [...Array.from({ length: 60 }, () => badLine(chance)), JSON.stringify(GOOD)];
  const outcome = await spawnedCli(["replay", "-"], [lines.join("\n")]);
  const answers = outcome.out.trimEnd().split("\n");
  const last = (JSON.parse(answers.at(-1) ?? "{}") as { readonly opened?: boolean }).opened;
  if (answers.length !== lines.length || last !== true)
    return `${lines.length} lines got ${answers.length} answers, the last ${answers.at(-1)?.slice(0, 200)}`;
  return unseemly(outcome);
};

/** Readings of zero, some of them bad. */
const zeroLines: Round = async (chance) => {
  const reading = () => `${pick(chance, ["left", "right"])},${(chance() - 0.5).toFixed(2)}`;
  const lines = Array.from({ length: 40 }, () => (chance() < 0.3 ? badLine(chance) : reading()));
  const outcome = await spawnedCli(["zero", "-"], [lines.join("\n")]);
  return unseemly(outcome);
};

/** More bad lines than fit into memory, and a line that alone does not. */
const floods: Round = async (chance) => {
  const isLong = chance() < 0.5;
  const piece = isLong ? "x".repeat(1_000_000) : `${badLine(chance).slice(0, 60)}\n`.repeat(5_000);
  const pieces = (function* () {
    for (let k = 0; k < (isLong ? 300 : 30); k++) yield piece;
    yield `\n${JSON.stringify(GOOD)}\n`;
  })();
  const outcome = await spawnedCli(["replay", "-"], pieces);
  if (!outcome.out.trimEnd().endsWith("}")) return `its last word is ${outcome.out.slice(-200)}`;
  const [last = ""] = outcome.out.trimEnd().split("\n").slice(-1);
  return (
    unseemly(outcome) ?? (last.includes('"opened":true') ? null : `the good line after it got ${last.slice(0, 200)}`)
  );
};

const RULES: Json = {
  minSeparation: 5,
  circular: true,
  noStraight: true,
  excludedLast: [[0, 20]],
  multiplesOfTen: "numbers",
};

/** Rules for combinations, one of them changed. */
const rules: Round = async (chance) => {
  const copy = copyOf(RULES);
  spoil(copy, chance);
  const action = pick(chance, ["count", "draw"]);
  const args = ["combinations", action, "--profile", "three-wheel", "--rules", "/dev/stdin"];
  const outcome = await spawnedCli(args, [JSON.stringify(copy)]);
  const bad = unseemly(outcome);
  return bad === null ? null : `${args.join(" ")} of ${JSON.stringify(copy)}: ${bad}`;
};

/** A recorded handover that was tampered with. */
const handovers: Round = async (chance) => {
  const copy = copyOf(pick(chance, [clean, lockedOut]));
  const at = spoil(copy, chance);
  const outcome = await spawnedCli(["handover", "check", "-"], [JSON.stringify(copy)]);
  const bad = unseemly(outcome);
  return bad === null ? null : `handover of ${placeText(at)}, now ${JSON.stringify(valueAt(copy, at))}: ${bad}`;
};

const KINDS: Readonly<Record<string, Round>> = { replayLines, zeroLines, floods, rules, handovers };

export const trial: Trial = {
  name: "hostile input on the command line",
  run: async ({ chance, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      for (const [kind, make] of Object.entries(KINDS)) {
        const misfit = await make(chance).catch((error) => String(error).slice(0, 400));
        if (misfit === null) pass();
        else fail(`round ${round}, ${kind}: ${misfit}`);
      }
    }
  },
};
