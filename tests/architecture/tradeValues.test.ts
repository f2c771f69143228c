import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import fitting from "../../shared/fitting.json" with { type: "json" };
import ofFitting from "../../shared/fitting-values.json" with { type: "json" };
import ofService from "../../shared/service.json" with { type: "json" };
import ofTrouble from "../../shared/trouble-values.json" with { type: "json" };

const FOLDERS = ["src/fitting", "src/service"];

/** Figures that are no training values, each with its reason. */
const ALLOWED: Readonly<Record<string, string>> = {
  "src/fitting/geometry/spindleThread.ts MM_PER_INCH 25.4": "an inch by definition",
  "src/fitting/fitCheck.ts four 0.25": "quarters of a turn",
  "src/fitting/fitCheck.ts four 0.5": "quarters of a turn",
  "src/fitting/fitCheck.ts four 0.75": "quarters of a turn",
  "src/fitting/fitChecks.ts CHECK_SET 2": "which set of checks there is",
  "src/fitting/inspect/faultDraws.ts SPOIL 3": "the third keyway from the right one",
  "src/fitting/offsetEstimate.ts STEPS 6": "steps of a solution",
  "src/fitting/offsetEstimate.ts UNKNOWNS 3": "unknowns of an equation",
  "src/fitting/offsetEstimate.ts offsetEstimate 0.95": "the usual confidence of an interval",
  "src/fitting/teaching/judgeOffset.ts FEWEST 8": "readings that leave five for their spread",
  "src/fitting/fittingActSchema.ts FAR 1000": "what a file may hold",
  "src/fitting/fittingActSchema.ts fittingActSchema 10": "what a file may hold",
  "src/fitting/fittingActSchema.ts graduations 1e6": "what a file may hold",
  "src/service/visitActSchema.ts visitActSchema 10": "what a file may hold",
};

/** Figures of plain arithmetic: degrees, graduations of 100, thousands; none of them is a size, a spread or a chance. */
const ARITHMETIC = ["0", "1", "2", "100", "180", "1000"];

const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => join(entry.parentPath, entry.name));

/** A source without its comments and texts: line breaks stay. */
const bare = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*|"(?:[^"\\\n]|\\.)*"|`[^`]*`/g, '""');

/** Every figure in a source, with the last constant or function before it; what a constant is set to, even where that is plain. */
function figuresIn(path: string, text = readFileSync(path, "utf8")): readonly string[] {
  let name = "";
  const found: string[] = [];
  const tokens = /\b(?:const|function) (\w+)(?:: [\w<>, ]+)?( = -?(?=\d))?|(?<![\w$.])(\d[\d_.]*(?:e-?\d+)?)/g;
  let isSet = false;
  for (const [, named, setTo, figure] of bare(text).matchAll(tokens)) {
    if (figure === undefined) {
      [name, isSet] = [named ?? name, /^[A-Z][A-Z]/.test(named ?? "") && setTo !== undefined];
      continue;
    }
    if (isSet || !ARITHMETIC.includes(figure)) found.push(`${path} ${name} ${figure}`);
    isSet = false;
  }
  return found;
}

describe("training values of the trade", () => {
  test("no figure of fitting and service is in the code, but those that are none", () => {
    const found = FOLDERS.flatMap(filesIn).flatMap((path) => figuresIn(path));
    expect([...new Set(found)].sort()).toEqual(Object.keys(ALLOWED).sort());
  });

  test("nor is one in the defects of the trouble bench", () => {
    const chanceOfEither = " 0.5";
    const found = figuresIn("src/handover/trouble/conditions.ts");
    expect(found.filter((one) => !one.endsWith(chanceOfEither))).toEqual([]);
  });

  test("a figure would be found wherever it is", () => {
    expect(figuresIn("a.ts", "const SPARES = 1; const f = (x: number) => 0.5 * x; const a = { b_mm: 3 };")).toEqual([
      "a.ts SPARES 1",
      "a.ts f 0.5",
      "a.ts a 3",
    ]);
  });

  const entries = [
    fitting.sizes,
    ofFitting.values,
    ofTrouble.values,
    ofService.values,
    ...Object.values(ofService.cells),
  ]
    .flatMap((table) => Object.entries(table as Readonly<Record<string, Readonly<Record<string, unknown>>>>))
    .map(([name, entry]) => ({ name, entry }));

  test.each(entries)("$name has its figures, a unit and a reason", ({ entry }) => {
    const { unit, reason, value, from, to, list } = entry;
    expect(unit).toMatch(/^[a-z ]+$/);
    expect(reason).toMatch(/^[A-Z0-9].{10,}\.$/);
    expect([value, from, list].filter((one) => one !== undefined)).toHaveLength(1);
    const figures = (list ?? [value ?? from, to ?? value]) as readonly number[];
    expect(figures.length).toBeGreaterThan(0);
    expect(figures.every((one) => Number.isFinite(one))).toBe(true);
    if (from !== undefined) expect(from).toBeLessThan(to as number);
  });
});
