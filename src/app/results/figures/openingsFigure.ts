import { type FirstTimeOpenings, firstTimeOpenings } from "../../../progress/stops/firstTimeOpenings";
import { type AttemptRecord, HELP_LEVELS } from "../../../records/attemptRecord";
import { countText } from "../../../wording/amountWords";
import { percentText, rangeText } from "../../parts/numbers";
import type { FigureModel } from "../../pictures/charts/figureModel";
import { HELP_WORDS } from "../attemptRows";

/** What is counted: help and end of each try. */
type Tried = Pick<AttemptRecord, "help" | "opened" | "isLate">;

const WORDS = {
  attempts: {
    title: "First-time openings",
    one: "attempt",
    many: "attempts",
    did: "opened",
    score: (part: string) => `You open ${part}.`,
  },
  jobs: {
    title: "Jobs done right",
    one: "job",
    many: "jobs",
    did: "right",
    score: (part: string) => `You get ${part} right.`,
  },
} as const;

interface Named {
  readonly label: string;
  readonly found: FirstTimeOpenings;
}

function namedOpenings(attempts: readonly Tried[]): Named[] {
  const groups = [
    { label: "all", of: attempts },
    { label: "last 20", of: attempts.length > 20 ? attempts.slice(-20) : [] },
    ...HELP_LEVELS.map((help) => ({ label: HELP_WORDS[help], of: attempts.filter((one) => one.help === help) })),
  ];
  return groups.flatMap(({ label, of }) => {
    const found = firstTimeOpenings(of);
    return found === null ? [] : [{ label, found }];
  });
}

/**
 * How often the lock opened at the first try, or the job was right, with how sure that is.
 *
 * @param tries - attempts, or jobs as practices
 */
export function openingsFigure(tries: readonly Tried[], kind: keyof typeof WORDS = "attempts"): FigureModel {
  const { title, one, many, did, score } = WORDS[kind];
  const rows = namedOpenings(tries);
  const all = rows[0]?.found;
  if (all === undefined) return { title, sentence: `No ${one} yet.`, chart: null, table: null };
  return {
    title,
    sentence: `${score(`${all.opened} of ${all.trials}`)} With ${countText(all.trials, one)}, your true rate lies between ${percentText(all.interval.low)} and ${percentText(all.interval.high)}.`,
    chart: {
      kind: "intervals",
      rows: rows.map(({ label, found }) => ({ label, value: found.share, interval: found.interval })),
      domain: { low: 0, high: 1 },
      axis: `share ${did}; bar: where the true rate lies`,
      tickText: percentText,
    },
    table: {
      caption: title,
      head: [many, did, "of", "share", "true rate lies in"],
      rows: rows.map(({ label, found }) => [
        label,
        `${found.opened}`,
        `${found.trials}`,
        percentText(found.share),
        rangeText(found.interval, percentText),
      ]),
    },
    note: `The range is a Wilson interval at 95 % confidence: of 100 such ranges about 95 hold the true rate. It takes every ${one} for equally likely to go right, so it says little while you still learn fast.`,
  };
}
