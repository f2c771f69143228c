import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import type { LiveBench } from "../../../school/wire/liveWire";
import { countText } from "../../../wording/amountWords";
import { clockText } from "../../parts/moments";
import { shownName } from "../../parts/shownName";
import type { BoardRow, Standing } from "./boardRows";

const PAGES: ReadonlyMap<string, string> = new Map([
  ["bench", "Dialing"],
  ["zeroing", "Zeroing a dial"],
  ["fitting", "Fitting a dial"],
  ["handover", "Handing over a door"],
  ["sittings", "Choosing a sheet to sit"],
  ["start", "On the start page"],
  ["logbook", "In the logbook"],
  ["sheets", "In the drill sheets"],
  ["words", "Looking up a word"],
  ["dial", "Setting up a real dial"],
]);

/** Who works at a bench, as it is called. */
export const whoWords = ({ person, benchName }: Pick<BoardRow, "person" | "benchName">): string =>
  shownName(person ?? benchName ?? "A bench");

function legWords({ leg, isWaiting }: NonNullable<LiveBench["state"]>): string {
  if (leg === undefined || isWaiting) return "";
  return leg.at === leg.of ? ", drawing the bolt" : `, number ${leg.at} of ${leg.of - 1}`;
}

/** What is worked on: "Dialing, number 2 of 3". */
export function doingWords({ state }: LiveBench): string {
  if (state === null) return "Nothing to show yet";
  const { exercise, sheet } = state;
  const what = sheet === undefined ? (PAGES.get(exercise) ?? "On another page") : `Sitting “${shownName(sheet)}”`;
  if (exercise === "bench" && state.isWaiting) return "Dialing: the result is shown";
  return `${what}${legWords(state)}`;
}

/** The lock under the hand: "three-wheel"; empty where none is. */
export function lockWords({ state }: LiveBench): string {
  if (state?.profileId === undefined) return "";
  const profile = SHIPPED_PROFILES.find(({ id }) => id === state.profileId);
  return profile === undefined ? "another lock" : (profile.short ?? profile.title);
}

/** What the last attempt or job came to: "right, 10:42". */
export function lastWords({ state }: LiveBench): string {
  const last = state?.last;
  if (last === undefined) return "none yet";
  return `${last.isRight ? "right" : "not right"}, ${clockText(last.endedAt)}`;
}

const MINUTE_MS = 60_000;

function forWords(since: number, now: number): string {
  const minutes = Math.floor((now - since) / MINUTE_MS);
  return minutes < 1 ? "" : ` for ${minutes} min`;
}

/** How it stands with a bench, as a mark that differs in shape, for eyes alone. */
export const STANDING_MARKS: Readonly<Record<Standing, string>> = {
  help: "!",
  waiting: "◷",
  working: "▸",
  silent: "…",
  gone: "○",
};

/** How it stands with a bench: "needs help since 10:42". @param now - by the server's clock, milliseconds since 1970 */
export function standingWords({ bench, standing }: BoardRow, now: number): string {
  const { hand, seenAt, isHere } = bench;
  switch (standing) {
    case "help":
      return `needs help since ${clockText(hand?.raisedAt ?? seenAt)}${isHere ? "" : `, offline since ${clockText(seenAt)}`}`;
    case "waiting":
      return `waiting${forWords(seenAt, now)}`;
    case "working":
      return "at work";
    case "silent":
      return `silent since ${clockText(seenAt)}`;
    case "gone":
      return `offline since ${clockText(seenAt)}`;
  }
}

/** Records that a bench had not sent when it told last; empty where it had sent all. */
export const unsentWords = ({ state }: LiveBench): string =>
  state === null || state.unsent === 0 ? "" : `${countText(state.unsent, "record")} not sent yet`;

const SUMMED: readonly (readonly [Standing, string])[] = [
  ["help", "need help"],
  ["waiting", "waiting"],
  ["working", "at work"],
  ["silent", "silent"],
  ["gone", "offline"],
];

/** All in one line: "3 benches: 1 needs help, 2 at work". */
export function summaryWords(rows: readonly BoardRow[]): string {
  const counts = SUMMED.flatMap(([standing, words]) => {
    const count = rows.filter((row) => row.standing === standing).length;
    if (count === 0) return [];
    return [`${count} ${standing === "help" && count === 1 ? "needs help" : words}`];
  });
  return `${countText(rows.length, "bench", "benches")}: ${counts.join(", ")}.`;
}
