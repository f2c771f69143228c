import { expect, test } from "vitest";
import type { DialDoubt } from "../../../src/realdial/sources/dialDoubt";
import { describeSource, mayKeepMotion } from "../../../src/realdial/sources/sourceDescription";
import { MOST_SOURCES, SCREEN_SOURCE, SourcesSeen } from "../../../src/realdial/sources/sourcesSeen";

const ENCODER = describeSource("encoder", 0.05);
const PHONE = describeSource("phone", 0.3);
const HIDDEN = describeSource("ordinary-dial", 0.06, null, false);

const kindsOf = ({ forRecord }: SourcesSeen) => forRecord.sources?.map(({ kind }) => kind);

test.each([
  { said: "nothing turned", by: [], kinds: undefined },
  { said: "the screen alone", by: [SCREEN_SOURCE, SCREEN_SOURCE], kinds: undefined },
  { said: "one device, described anew at each move", by: [ENCODER, { ...ENCODER }], kinds: ["encoder"] },
  {
    said: "a device, then the screen, then the device",
    by: [ENCODER, SCREEN_SOURCE, ENCODER],
    kinds: ["encoder", "screen"],
  },
  { said: "the screen, then a device", by: [SCREEN_SOURCE, PHONE], kinds: ["screen", "phone"] },
])("$said", ({ by, kinds }) => {
  const seen = new SourcesSeen();
  for (const one of by) seen.note(one);
  expect(kindsOf(seen)).toEqual(kinds);
});

test("an attempt that begins by a move keeps what made it, one that begins before it keeps nothing", () => {
  const seen = new SourcesSeen();
  seen.note(ENCODER);
  seen.note(PHONE);
  seen.mayGoOn();
  seen.goOn();
  expect(kindsOf(seen)).toEqual(["phone"]);
  seen.forget();
  expect(seen.forRecord).toEqual({});
  seen.note(PHONE);
  expect(kindsOf(seen)).toEqual(["phone"]);
});

test("a device whose noise is measured again and again is named once, by what was measured last", () => {
  const seen = new SourcesSeen();
  const at = (noise: number | null) => describeSource("printed-dial", 0.06, noise);
  for (const noise of [null, 0.011, 0.014, 0.012]) seen.note(at(noise));
  expect(seen.forRecord.sources).toEqual([at(0.012)]);
  seen.note(at(null));
  expect(seen.forRecord.sources).toEqual([at(0.012)]);
  seen.note({ ...at(0.012), resolution: 0.2 });
  expect(seen.forRecord.sources).toHaveLength(2);
});

test("a list never grows beyond what a record takes", () => {
  const seen = new SourcesSeen();
  for (let k = 1; k < 40; k++) seen.note(describeSource("midi", k));
  expect(seen.forRecord.sources).toHaveLength(MOST_SOURCES);
  // A list without room still says that no motion is kept.
  seen.note(HIDDEN);
  seen.note(SCREEN_SOURCE);
  expect(seen.forRecord.sources).toHaveLength(MOST_SOURCES);
  expect(mayKeepMotion(seen.forRecord)).toBe(false);
});

test("no motion may be kept once a source was there that keeps none, until another attempt begins without it", () => {
  const hidden = HIDDEN;
  const seen = new SourcesSeen();
  seen.note(describeSource("ordinary-dial", 0.06));
  expect(seen.mayKeepMotion).toBe(true);
  seen.note(hidden);
  seen.note(SCREEN_SOURCE);
  expect(seen.mayKeepMotion).toBe(false);
  expect(seen.forRecord.sources).toHaveLength(3);
  seen.mayGoOn();
  seen.goOn();
  expect(seen.mayKeepMotion).toBe(true);
  seen.note(hidden);
  seen.mayGoOn();
  seen.goOn();
  expect(seen.mayKeepMotion).toBe(false);
  seen.forget();
  expect(seen.mayKeepMotion).toBe(true);
});

test("a doubt marks an attempt that has begun, each reason once, and not the next one", () => {
  const seen = new SourcesSeen();
  expect(seen.doubt("sight-lost")).toBe(false);
  expect(seen.forRecord).toEqual({});
  seen.note(ENCODER);
  expect(["gap", "sight-lost", "gap"].map((why) => seen.doubt(why as DialDoubt))).toEqual([true, true, true]);
  expect(seen.forRecord.doubts).toEqual(["gap", "sight-lost"]);
  seen.mayGoOn();
  seen.goOn();
  expect(seen.forRecord).toEqual({ sources: [ENCODER] });
  seen.doubt("hidden");
  seen.forget();
  expect(seen.forRecord).toEqual({});
});

test("what turned the dial since another attempt may have begun is of that one too, once it has", () => {
  const seen = new SourcesSeen();
  seen.note(ENCODER);
  seen.note(HIDDEN);
  seen.mayGoOn();
  seen.doubt("sight-lost");
  seen.note(SCREEN_SOURCE);
  expect(kindsOf(seen)).toEqual(["encoder", "ordinary-dial", "screen"]);
  seen.goOn();
  expect(kindsOf(seen)).toEqual(["ordinary-dial", "screen"]);
  expect([seen.mayKeepMotion, seen.forRecord.doubts]).toEqual([false, ["sight-lost"]]);
  seen.mayGoOn();
  seen.goOn();
  expect([seen.mayKeepMotion, seen.forRecord]).toEqual([true, {}]);
});

test("a device that has turned nothing makes nothing doubtful when it is lost", () => {
  const seen = new SourcesSeen();
  seen.note(SCREEN_SOURCE);
  expect(seen.doubt("disconnected")).toBe(false);
  expect(seen.forRecord).toEqual({});
  seen.note(ENCODER);
  seen.note(SCREEN_SOURCE);
  expect(seen.doubt("disconnected")).toBe(true);
});

test("what was forgotten does not come back where another attempt begins by no move", () => {
  const seen = new SourcesSeen();
  seen.note(ENCODER);
  seen.mayGoOn();
  seen.doubt("gap");
  seen.forget();
  seen.goOn();
  expect(seen.forRecord).toEqual({});
  expect(seen.doubt("gap")).toBe(false);
});

test("the screen is described as records of every version have it", () => {
  expect(SCREEN_SOURCE).toEqual({ kind: "screen", resolution: 0.1, noise: null, isCoarse: false });
});
