import { describe, expect, test } from "vitest";
import { BoardNews } from "../../../../src/app/classroom/board/boardNews";
import { boardRows, type Device, isUnknown } from "../../../../src/app/classroom/board/boardRows";
import {
  doingWords,
  lastWords,
  standingWords,
  summaryWords,
  unsentWords,
} from "../../../../src/app/classroom/board/boardWords";
import { silentBench } from "../../../../src/school/live/liveBoard";
import { GONE_MS, type LiveBench } from "../../../../src/school/wire/liveWire";

const NOW = Date.UTC(2026, 10, 30, 10, 42);
const MINUTE = 60_000;

const stateOf = (personId: string, other: Partial<NonNullable<LiveBench["state"]>> = {}): LiveBench["state"] => ({
  personId,
  exercise: "bench",
  isWaiting: false,
  unsent: 0,
  ...other,
});

const benchOf = (name: string, other: Partial<LiveBench> = {}): LiveBench => ({
  ...silentBench(`d-${name}`, NOW),
  isHere: true,
  state: stateOf(`p-${name}`),
  ...other,
});

const deviceOf = (name: string, other: Partial<Device> = {}): Device => ({
  id: `d-${name}`,
  name: `Bench of ${name}`,
  createdAt: NOW,
  seenAt: NOW,
  signedOutAt: null,
  people: [{ id: `p-${name}`, name }],
  ...other,
});

const handAt = (name: string, raisedAt: number) => ({ personId: `p-${name}`, raisedAt });
const waiting = (name: string, seenAt: number) =>
  benchOf(name, { state: stateOf(`p-${name}`, { isWaiting: true }), seenAt });

const rowsOf = (benches: readonly LiveBench[], devices: readonly Device[], now = NOW) =>
  boardRows(new Map(benches.map((bench) => [bench.deviceId, bench])), devices, now);

describe("the rows of a board", () => {
  test("those who need help come first, whoever waits longest before others, then long waits, then names", () => {
    const benches = [
      benchOf("Ada"),
      waiting("Bo", NOW - 31_000),
      waiting("Cy", NOW - 29_000),
      benchOf("Del", { hand: handAt("Del", NOW - 1000) }),
      benchOf("Eve", { hand: handAt("Eve", NOW - 2000), isHere: false }),
    ];
    const rows = rowsOf(
      benches,
      ["Cy", "Bo", "Ada", "Del", "Eve"].map((name) => deviceOf(name)),
    );
    expect(rows.map(({ person, standing }) => `${person} ${standing}`)).toEqual([
      "Eve help",
      "Del help",
      "Bo waiting",
      "Ada working",
      "Cy waiting",
    ]);
  });

  test.each([
    { what: "connected, nothing told", bench: benchOf("Ada", { state: null }), standing: "silent" },
    { what: "at work, told lately", bench: benchOf("Ada", { seenAt: NOW - 2 * MINUTE }), standing: "working" },
    { what: "at work, told long ago", bench: benchOf("Ada", { seenAt: NOW - 2 * MINUTE - 1 }), standing: "silent" },
    { what: "waiting for long", bench: waiting("Ada", NOW - 20 * MINUTE), standing: "waiting" },
    { what: "gone", bench: benchOf("Ada", { isHere: false }), standing: "gone" },
  ])("$what: $standing", ({ bench, standing }) => {
    expect(rowsOf([bench], []).map((row) => row.standing)).toEqual([standing]);
  });

  test("a bench that was here lately and told this server nothing is there too; one signed out is not", () => {
    const devices = [
      deviceOf("Ada", { seenAt: NOW - MINUTE }),
      deviceOf("Bo", { seenAt: NOW - GONE_MS }),
      deviceOf("Cy", { signedOutAt: NOW }),
    ];
    expect(rowsOf([], devices).map((row) => [row.person, standingWords(row, NOW)])).toEqual([
      ["Ada", expect.stringMatching(/^offline since \d\d:41$/)],
    ]);
  });

  test.each([
    { board: [benchOf("Ada")], devices: [deviceOf("Ada")], unknown: false },
    { board: [benchOf("Ada")], devices: [], unknown: true },
    { board: [benchOf("Ada", { state: stateOf("p-Bo") })], devices: [deviceOf("Ada")], unknown: true },
    { board: [benchOf("Ada", { state: null })], devices: [deviceOf("Ada")], unknown: false },
  ])("names are asked for again where somebody is not known: $unknown", ({ board, devices, unknown }) => {
    expect(isUnknown(new Map(board.map((bench) => [bench.deviceId, bench])), devices)).toBe(unknown);
  });
});

describe("the words of a board", () => {
  test.each([
    { other: { leg: { at: 2, of: 4 } }, words: "Dialing, number 2 of 3" },
    { other: { leg: { at: 4, of: 4 } }, words: "Dialing, drawing the bolt" },
    { other: { leg: { at: 4, of: 4 }, isWaiting: true }, words: "Dialing: the result is shown" },
    {
      other: { exercise: "sittings", sheet: "Friday test", leg: { at: 1, of: 4 } },
      words: "Sitting “Friday test”, number 1 of 3",
    },
    { other: { exercise: "logbook", isWaiting: true }, words: "In the logbook" },
    { other: { exercise: "constructor", isWaiting: true }, words: "On another page" },
  ])("$words", ({ other, words }) => {
    expect(doingWords(benchOf("Ada", { state: stateOf("p", other) }))).toBe(words);
  });

  test("last result, records not sent, a hand at a bench that is gone, all in one line", () => {
    const state = stateOf("p-Ada", { last: { isRight: false, endedAt: NOW }, unsent: 12 });
    const bench = benchOf("Ada", { state, isHere: false, hand: handAt("Ada", NOW - MINUTE) });
    expect([lastWords(bench), unsentWords(bench)]).toEqual([
      expect.stringMatching(/^not right, \d\d:42$/),
      "12 records not sent yet",
    ]);
    const rows = rowsOf([bench, benchOf("Bo")], [deviceOf("Ada"), deviceOf("Bo")]);
    expect(rows.map((row) => standingWords(row, NOW))).toEqual([
      expect.stringMatching(/^needs help since \d\d:41, offline since \d\d:42$/),
      "at work",
    ]);
    expect(summaryWords(rows)).toBe("2 benches: 1 needs help, 1 at work.");
  });
});

describe("what is said aloud of a board", () => {
  const rowsWith = (hands: readonly string[], gone: readonly string[] = []) =>
    rowsOf(
      ["Ada", "Bo", "Cy"].map((name) =>
        benchOf(name, { isHere: !gone.includes(name), hand: hands.includes(name) ? handAt(name, NOW) : null }),
      ),
      ["Ada", "Bo", "Cy"].map((name) => deviceOf(name)),
    );

  test("who came to need help or went, gathered, and never twice within five seconds", () => {
    const news = new BoardNews();
    expect(news.next(rowsWith(["Cy"]), 0)).toBeNull();
    expect(news.next(rowsWith(["Cy", "Ada"]), 100)).toBe("Ada needs help.");
    expect(news.next(rowsWith(["Cy", "Ada", "Bo"]), 200)).toBeNull();
    expect(news.next(rowsWith(["Ada", "Bo"], ["Cy"]), 5100)).toBe("Bo needs help. Cy is offline.");
    expect(news.next(rowsWith([], ["Cy"]), 20_000)).toBeNull();
    expect(news.next(rowsWith(["Ada", "Bo"], ["Cy"]), 20_100)).toBe("Ada and Bo need help.");
  });
});
