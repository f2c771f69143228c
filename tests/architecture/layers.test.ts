import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import {
  errorInWords,
  forbiddenImports,
  forbiddenPackages,
  importsOf,
  layerOf,
  MAY_IMPORT,
  PURE,
  type SourceFile,
  sentenceTakenApart,
  undocumented,
  worldIn,
} from "./layers";

const SRC = join(import.meta.dirname, "../../src");
const DEPENDENCIES = Object.keys(manifest.dependencies);

const files: SourceFile[] = readdirSync(SRC, { recursive: true, encoding: "utf8" })
  .filter((file) => /\.[cm]?tsx?$/.test(file))
  .map((file) => ({ file: file.split(sep).join("/"), text: readFileSync(join(SRC, file), "utf8") }));

const folders = readdirSync(SRC, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

describe("the source", () => {
  test("is there to be looked at", () => {
    expect(files.length).toBeGreaterThan(30);
    expect(files.flatMap(({ text }) => importsOf(text)).length).toBeGreaterThan(100);
  });

  test("has no folder that is not a layer", () => {
    expect(folders.filter((folder) => !(folder in MAY_IMPORT))).toEqual([]);
  });

  test("has no file outside a layer, but the page's entry", () => {
    expect(files.map(({ file }) => file).filter((file) => layerOf(file) === "" && file !== "main.tsx")).toEqual([]);
  });

  test("has no file named for nothing in particular", () => {
    const vague = /(^|\/)(index|utils?|helpers?|common|misc|types|constants)\.tsx?$/;
    expect(files.map(({ file }) => file).filter((file) => vague.test(file))).toEqual([]);
  });
});

describe("the table of layers", () => {
  test("names only layers, and none its own", () => {
    for (const [layer, others] of Object.entries(MAY_IMPORT)) {
      expect(others.filter((other) => !(other in MAY_IMPORT) || other === layer)).toEqual([]);
    }
  });

  test("has no arrow that leads back up", () => {
    const below = (layer: string): string[] => (MAY_IMPORT[layer] ?? []).flatMap((other) => [other, ...below(other)]);
    for (const layer of Object.keys(MAY_IMPORT)) expect(below(layer)).not.toContain(layer);
  });

  test("lets no pure layer see one that is not", () => {
    for (const layer of PURE) expect((MAY_IMPORT[layer] ?? []).filter((other) => !PURE.includes(other))).toEqual([]);
  });
});

describe.each(files.map((file) => [file.file, file] as const))("%s", (_, file) => {
  test("imports only layers below it", () => {
    const layer = layerOf(file.file);
    const allowed = MAY_IMPORT[layer]?.join(", ") || "nothing of ours";
    expect(forbiddenImports(file), `${layer} may import ${allowed}; the table is MAY_IMPORT in layers.ts`).toEqual([]);
  });

  test("takes no sentence apart", () => {
    expect(sentenceTakenApart(file), "words are made of codes and values, never read back").toBeUndefined();
  });

  test("makes no error with its sentence already written", () => {
    expect(errorInWords(file), "an error is made of a problem, `wording/problem.ts`").toBeUndefined();
  });

  test("imports no tool of development, and no package that its layer has no use for", () => {
    const why = "not a dependency in package.json, or not among PURE_PACKAGES of layers.ts";
    expect(forbiddenPackages(file, DEPENDENCIES), why).toEqual([]);
  });
});

const pure = files.filter(({ file }) => PURE.includes(layerOf(file)));

describe.each(pure.map((file) => [file.file, file] as const))("%s, in a pure layer,", (_, file) => {
  test("brings no clock, no chance and no screen of its own", () => {
    expect(worldIn(file), "time and a seeded generator are arguments").toBeUndefined();
  });

  test("documents what it exports", () => {
    expect(undocumented(file), "without a doc comment on the line above it").toEqual([]);
  });
});

// A check that cannot fail proves nothing: here each is shown a violation.
describe("a planted violation is found", () => {
  test.each([
    { why: "an arrow up", file: "lock/dial.ts", text: 'import { a } from "../dialing/runs";' },
    { why: "an arrow sideways", file: "statistics/chance.ts", text: 'import type { A } from "../lock/dial";' },
    { why: "an arrow to the screen", file: "drill/odds.ts", text: 'import { Dial } from "../app/dial/Dial";' },
    { why: "an arrow from deep down", file: "app/dial/Dial.tsx", text: 'import { run } from "../../cli/main";' },
    { why: "a re-export", file: "trace/replay.ts", text: 'export { explain } from "../drill/combinationRules";' },
    { why: "an import for its effects", file: "lock/dial.ts", text: 'import "../cli/main";' },
    { why: "a dynamic import", file: "dialing/runs.ts", text: 'const a = await import("../drill/odds");' },
    { why: "an import over several lines", file: "lock/dial.ts", text: 'import {\n  a,\n} from "../trace/replay";' },
    { why: "a test's helper", file: "cli/main.ts", text: 'import { run } from "../../tests/cli/fakeTerminal";' },
    { why: "a folder that is no layer", file: "lock/dial.ts", text: 'import { a } from "../tools/a";' },
    { why: "a layer that is not in the table", file: "tools/a.ts", text: 'import { a } from "../lock/dial";' },
  ])("$why", (planted) => {
    expect(forbiddenImports(planted)).toHaveLength(1);
  });

  test.each([
    {
      why: "a model tester",
      file: "dialing/dialingMachine.ts",
      text: 'import { createTestModel } from "@xstate/test";',
    },
    { why: "a judge of the tests", file: "statistics/a.ts", text: 'import jstat from "jstat";' },
    { why: "a test runner in the app", file: "app/shell/App.tsx", text: 'import { test } from "vitest";' },
    { why: "the tool of the build in the app", file: "app/shell/App.tsx", text: 'import type { Plugin } from "vite";' },
    { why: "a property tester in the command line", file: "cli/main.ts", text: 'import fc from "fast-check";' },
    { why: "React in a pure layer", file: "dialing/advice.ts", text: 'import { useState } from "react";' },
    {
      why: "its binding to charts in a pure layer",
      file: "drill/odds.ts",
      text: 'import { useActor } from "@xstate/react";',
    },
    { why: "the file system in a pure layer", file: "trace/replay.ts", text: 'import { readFile } from "node:fs";' },
    { why: "a package that is not declared", file: "app/shell/App.tsx", text: 'import _ from "lodash";' },
  ])("$why", (planted) => {
    expect(forbiddenPackages(planted, DEPENDENCIES)).toHaveLength(1);
  });

  test.each([
    "const now = Date.now();",
    "const now = new Date();",
    "const now = performance.now();",
    "const p = Math.random();",
    'document.title = "";',
    "window.alert();",
    'localStorage.getItem("a");',
    "setTimeout(() => {}, 3);",
    'await fetch("a");',
  ])("%s in a pure layer", (text) => {
    for (const layer of PURE) expect(worldIn({ file: `${layer}/a.ts`, text })).toBeDefined();
    expect(worldIn({ file: "app/a.ts", text })).toBeUndefined();
  });

  test.each([
    "export function a() {}",
    "export const a = 1;",
    "export async function a() {}",
    "export class a {}",
    "export interface a {}",
    "export type a = 1;",
    "/** Of something else. */\nconst b = 1;\nexport const a = b;",
    "// No doc comment.\nexport const a = 1;",
  ])("%j without a word", (text) => {
    expect(undocumented({ file: "lock/a.ts", text })).toEqual(["a"]);
  });
});

describe("a sentence taken apart is found", () => {
  test.each([
    "const [, number] = error.message.match(/number (\\d)/) ?? [];",
    'const path = message.split(" ")[0];',
    'says.replace(/^sheet: /, "");',
    'if (fault?.message?.startsWith("You ran")) return;',
  ])("%s", (text) => {
    expect(sentenceTakenApart({ file: "app/desk/a.ts", text })).toBeDefined();
  });
});

describe("an error with its sentence already written is found", () => {
  test.each([
    'export class SheetError extends Error {\n  override readonly name = "SheetError";\n}',
    "class DayError extends RangeError {}",
    'throw new SheetError("This sheet has no title.");',
    "throw new SheetError(`cannot be read`, { cause });",
    'constructor(code: string) {\n    super("bad-file", "This file is no logbook.");\n  }',
  ])("%s", (text) => {
    expect(errorInWords({ file: "records/a.ts", text })).toBeDefined();
  });

  test.each([
    "export class SheetError extends ProblemError {}",
    'throw new SheetError(sheetProblem("no-title", ["title"]));',
    'if (first === undefined) throw new Error("no lock is shipped");',
  ])("%s is none", (text) => {
    expect(errorInWords({ file: "records/a.ts", text })).toBeUndefined();
  });
});

describe("what is allowed is not found", () => {
  test.each([
    { file: "app/dial/Dial.tsx", text: 'import { reading } from "../../lock/dial"; import { A } from "../shell/A";' },
    { file: "lock/shippedProfiles.ts", text: 'import a from "../../shared/profiles/a.json" with { type: "json" };' },
    {
      file: "lock/dial.ts",
      text: '// as in "../app/dial/Dial": import { a } from "../app/a";\nimport { a } from "./a";',
    },
  ])("$text", (file) => {
    expect(forbiddenImports(file)).toEqual([]);
  });

  test("a word in a comment is no clock", () => {
    expect(
      worldIn({ file: "lock/a.ts", text: "/** Like Date.now() would. */\n// Math.random()\nconst a = 1;" }),
    ).toBeUndefined();
  });

  test("a documented export is documented", () => {
    expect(undocumented({ file: "lock/a.ts", text: "/**\n * A.\n */\nexport const a = 1;" })).toEqual([]);
  });
});
