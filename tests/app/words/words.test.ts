import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import bank from "../../../shared/questions.json" with { type: "json" };
import { TOPIC_PLACES } from "../../../src/app/words/topicPlaces";
import { WORD_GROUPS, wordOf } from "../../../src/app/words/wordTable";
import { SHIPPED_COURSE } from "../../../src/drill/course/shippedCourse";

const WORDS = WORD_GROUPS.flatMap(({ words }) => words);
const SOURCE = join(import.meta.dirname, "../../../src");

/** Words that the screens use without explaining them. */
const WANTED = [
  ...["arrival", "gate", "fence", "lever", "wheel", "wheel-pack", "fly", "drive-cam", "spindle", "graduation", "dial"],
  ...[
    "opening-index",
    "changing-index",
    "dial-ring",
    "change-key",
    "spin-off",
    "zero",
    "lost-motion",
    "stop",
    "reading",
  ],
  ...[
    "stop-error",
    "positive-stop",
    "draw",
    "run",
    "free-play",
    "overshoot",
    "drill-sheet",
    "sitting",
    "verdict",
    "bolt",
  ],
  ...["holdback", "handover", "egress", "record", "condition", "defect", "help"],
  ...["clearance", "rub", "lead", "spline-key", "key-seat", "torque", "thread-locker", "washers", "end-play"],
  ...["real-dial", "coarse-source", "turns-in-doubt"],
  ...["ring-off-center", "bushing", "parallax", "service-visit", "service", "batteries"],
];

describe("the page of words", () => {
  test.each(WANTED)("explains %s", (id) => {
    const word = wordOf(id);
    expect(word?.text.length).toBeGreaterThan(30);
    // One or two sentences, three where the third is short.
    expect(word?.text.match(/[.!?](\s|$)/g)?.length ?? 0).toBeLessThanOrEqual(3);
  });

  test("has an address of its own for each word", () => {
    const ids = WORDS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => !/^[a-z]+(-[a-z]+)*$/.test(id))).toEqual([]);
  });

  test("has at least a dozen drawings, no two of them the same", () => {
    const pictures = WORDS.flatMap(({ picture }) => (picture === undefined ? [] : [picture]));
    expect(new Set(pictures).size).toBe(pictures.length);
    expect(pictures.length).toBeGreaterThanOrEqual(12);
  });

  test("has every word that a screen links to", () => {
    const files = readdirSync(SOURCE, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".tsx"));
    const linked = files.flatMap((name) =>
      [...readFileSync(join(SOURCE, name), "utf8").matchAll(/<WordLink word="([^"]*)"/g)].map(([, id = ""]) => id),
    );
    expect(linked.length).toBeGreaterThan(0);
    expect(linked.filter((id) => wordOf(id) === undefined)).toEqual([]);
  });
});

describe("what the questions ask about", () => {
  const topics = [...new Set(bank.questions.map(({ topic }) => topic))];
  const places = new Map(Object.entries(TOPIC_PLACES));

  test.each(topics)("%s is taught somewhere", (topic) => {
    const place = places.get(topic);
    expect(place?.words.length).toBeGreaterThan(0);
    expect(place?.words.filter((id) => wordOf(id) === undefined)).toEqual([]);
    const titles = SHIPPED_COURSE.map(({ sheet }) => sheet.title);
    expect(place?.lessons.filter((title) => !titles.includes(title))).toEqual([]);
  });
});
