import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { namedClasses, styledClasses, unusedClasses, vocabulary, type Written } from "./looks";

/*
 * How the page looks is said in few lines: elements, a vocabulary of class names made from the tokens, and what one drawing
 * or one screen alone has.
 */

/** Lines of all style sheets together must stay below it. */
const MOST_LINES = 2000;

const read = (root: string, ending: RegExp): Written[] =>
  readdirSync(root, { recursive: true, encoding: "utf8" })
    .filter((file) => ending.test(file))
    .map((file) => ({ file, text: readFileSync(join(root, file), "utf8") }));

const sheets = read("src", /\.css$/);
const screens = read("src/app", /\.tsx?$/);
const css = sheets.map(({ text }) => text).join("\n");
const looks = sheets.find(({ file }) => file.endsWith("looks.css"))?.text ?? "";
/** Names that a test looks for and that have no looks. */
const sought = new Set(read("tests", /\.tsx?$/).flatMap(({ text }) => text.match(/[\w-]+/g) ?? []));

describe("style sheets", () => {
  test(`are below ${MOST_LINES} lines together`, () => {
    expect(css.split("\n").length).toBeLessThan(MOST_LINES);
  });

  test("have no rule for a class that no screen names", () => {
    expect(unusedClasses(css, screens)).toEqual([]);
  });

  test("a planted rule that nothing uses is found, one for a name put together is not", () => {
    const planted = ".never-named {\n color: red;\n}\n.pip-made > .also-never:hover {\n color: red;\n}";
    const screen = { file: "a.tsx", text: ["<i className={`pip pip-$", "{kind}`} />"].join("") };
    expect(unusedClasses(planted, [screen])).toEqual(["never-named", "also-never"]);
  });
});

describe("class names of screens", () => {
  test("each means something, or a test looks for it", async () => {
    const isMade = await vocabulary(looks);
    const styled = new Set(styledClasses(css));
    const names = new Set(screens.flatMap(namedClasses));
    expect([...names].filter((name) => !styled.has(name) && !isMade(name) && !sought.has(name))).toEqual([]);
  });

  test("a planted slip is found", async () => {
    const isMade = await vocabulary(looks);
    const screen = { file: "a.tsx", text: '<p className={isOver ? "text-small row" : "text-smal"}>' };
    expect(namedClasses(screen).filter((name) => !isMade(name))).toEqual(["text-smal"]);
  });

  test("take type, spaces and corners from the tokens", () => {
    const OWN_SIZE = /^(.*:)?-?(text|gap(-[xy])?|[mp][trblxy]?|rounded(-\w+)?)-\[[\d.]/;
    const own = screens
      .filter(({ file }) => !file.startsWith("pictures"))
      .flatMap((screen) => namedClasses(screen).filter((name) => OWN_SIZE.test(name)));
    expect(own).toEqual([]);
    expect("phone:mt-[13px]").toMatch(OWN_SIZE);
    expect("max-w-[640px]").not.toMatch(OWN_SIZE);
  });
});
