import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { OrdinaryView } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryView";
import {
  findingText,
  hintText,
  partText,
  setupText,
} from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryWords";
import { StubStorage } from "../../../../../support/board/stubStorage";

const STREAM = { getVideoTracks: () => [] } as unknown as MediaStream;
const ACTS = { agree: vi.fn(), refuse: vi.fn(), find: vi.fn(), again: vi.fn(), changeCamera: vi.fn() };
const SIZE = { width: 320, height: 240 };

let view: OrdinaryView;

beforeEach(() => {
  vi.stubGlobal("localStorage", new StubStorage());
  view = new OrdinaryView();
  view.ask(ACTS);
});
afterEach(() => vi.unstubAllGlobals());

describe("the setup of an ordinary dial", () => {
  test("begins with the question, before there is a picture", () => {
    expect([view.step, view.stream]).toEqual(["question", null]);
  });

  test("takes the taps in order, and from then on the mark that is nearest", () => {
    view.begin(STREAM);
    expect([view.step, view.nextTap]).toEqual(["marks", "middle"]);
    expect(view.tap(0.4, 0.6)).toBe("middle");
    expect(view.nextTap).toBe("index");
    expect(view.tap(0.4, 0.2)).toBe("index");
    expect(view.nextTap).toBeNull();
    expect(view.tap(0.45, 0.55)).toBe("middle");
    expect(view.marks).toEqual({ middle: { x: 0.45, y: 0.55 }, index: { x: 0.4, y: 0.2 } });
  });

  test("goes on to the next mark where one is moved by a key, and by no other key", () => {
    view.begin(STREAM);
    expect(view.moveByKey("middle", "Enter", false)).toBe(false);
    expect(view.nextTap).toBe("middle");
    expect(view.moveByKey("middle", "ArrowLeft", true)).toBe(true);
    expect([view.marks.middle, view.nextTap]).toEqual([{ x: 0.45, y: 0.5 }, "index"]);
    view.moveByKey("middle", "ArrowRight", true);
    expect(view.nextTap).toBe("index");
    view.moveByKey("index", "ArrowDown", false);
    expect(view.nextTap).toBeNull();
  });

  test("has the marks where they fitted the last time, until one is moved; a turn that is given up leaves them there", () => {
    const kept = new Map<string, string>();
    vi.stubGlobal("localStorage", { getItem: (key: string) => kept.get(key) ?? null, setItem: kept.set.bind(kept) });
    view.begin(STREAM);
    view.tap(0.4, 0.6);
    view.tap(0.4, 0.2);
    view.found();
    view.end();
    view.begin(STREAM);
    expect(view).toMatchObject({ areRemembered: true, nextTap: null, marks: { middle: { x: 0.4, y: 0.6 } } });
    view.tap(0.42, 0.6);
    expect(view.areRemembered).toBe(false);
    view.backToMarks();
    expect(view).toMatchObject({ step: "marks", nextTap: null, marks: { middle: { x: 0.42, y: 0.6 } } });
  });

  test("turns another camera on without asking again whether it is a practice lock", () => {
    view.begin(STREAM);
    view.change();
    expect([view.step, view.stream, view.acts]).toEqual(["opening", null, ACTS]);
  });

  test("goes to the slow turn with what is found, and back to the marks where it failed, which stay", () => {
    view.begin(STREAM);
    view.tap(0.4, 0.6);
    view.goTo("finding");
    view.found();
    view.turned({ step: "turning", part: 0.3, hint: "too-fast", shown: { markers: [], rings: [] } }, SIZE);
    expect(view).toMatchObject({ step: "turn", part: 0.3, hint: "too-fast", size: SIZE, problem: null });
    view.toMarks({ code: "no-numerals" });
    expect(view).toMatchObject({ step: "marks", nextTap: "middle", rim: null, problem: { code: "no-numerals" } });
    expect(view.marks.middle).toEqual({ x: 0.4, y: 0.6 });
  });

  test("asks anew after it was let go", () => {
    view.begin(STREAM);
    view.goTo("followed");
    view.end();
    expect([view.step, view.acts, view.stream]).toEqual(["question", null, null]);
  });
});

describe("words of the setup", () => {
  test.each([
    [{ code: "wrong-count", counted: 60, expected: 100 }, /^The ring found has 60 graduations, .* has 100\./],
    [{ code: "too-small", radius: 39.6, needed: 40 }, /: 39 pixels .* 40 are needed\. Bring the camera nearer\.$/],
    [{ code: "turn-not-seen", part: 0.634 }, /^Only 63 % of a turn was seen\./],
    [{ code: "turn-not-followed", lost: 0.4 }, /in 40 % of the pictures\. Turn slower/],
    [{ code: "no-numerals" }, /^The numerals are not seen/],
    [{ code: "no-marks" }, /take your hand off, and try again\.$/],
    [{ code: "out-of-picture" }, /^The dial is not wholly in the picture\./],
    [{ code: "bare-surroundings" }, /tape near the dial/],
  ] as const)("%j says what is wrong and what to do", (problem, words) => {
    expect(setupText(problem)).toMatch(words);
  });

  test("a turn that goes well is said to, and one that does not says what to do", () => {
    expect([hintText(null, 0), hintText(null, 0.2)]).toEqual(["Start turning.", "Good: go on like this."]);
    expect([hintText("too-dark", 0), hintText("too-fast", 0.2)]).toEqual([
      "Too dark: bring light.",
      "Too fast: turn slower.",
    ]);
    expect([hintText("turned-back", 0.2), hintText("covered", 0.2)]).toEqual([
      "You turned back. Go on the way you began.",
      "Your hand is in the way. Hold the knob by its side, with your fingertips.",
    ]);
    expect(partText(0.426)).toBe("42 % of the turn seen");
  });

  test("what to do with the marks is said one after the other", () => {
    const marking = { step: "marks", areRemembered: false } as const;
    const texts = (["middle", "index", null] as const).map((nextTap) => findingText({ ...marking, nextTap }));
    expect(texts).toEqual([
      "Tap the middle of the knob.",
      "Tap the tip of the index, where it meets the rim of the dial.",
      "Look at both marks. Drag one to correct it, then find the dial.",
    ]);
    expect(findingText({ ...marking, nextTap: null, areRemembered: true })).toMatch(/^The marks are where they fitted/);
    expect(findingText({ ...marking, nextTap: null, step: "finding" })).toBe("Looking for the dial.");
  });
});
