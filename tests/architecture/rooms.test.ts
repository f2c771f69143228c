import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { describe, expect, test } from "vitest";
import type { SourceFile } from "./layers";
import {
  circlesOfFolders,
  crowdedFolders,
  forbiddenRooms,
  longFiles,
  MOST_FILES,
  MOST_LINES,
  ROOM_MAY_IMPORT,
  roomOf,
} from "./rooms";

const SRC = join(import.meta.dirname, "../../src");

const names = readdirSync(SRC, { recursive: true, encoding: "utf8", withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map(({ parentPath, name }) =>
    join(parentPath, name)
      .slice(SRC.length + 1)
      .split(sep)
      .join("/"),
  );

const all: SourceFile[] = names
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => ({ file, text: readFileSync(join(SRC, file), "utf8") }));
const files = all.filter(({ file }) => file.startsWith("app/"));

describe("the table of rooms", () => {
  test("names every room, and no other", () => {
    const rooms = new Set(files.flatMap(({ file }) => roomOf(file) ?? []));
    expect([...rooms].sort()).toEqual(Object.keys(ROOM_MAY_IMPORT).sort());
  });

  test("has no circle", () => {
    const below = (room: string): string[] =>
      (ROOM_MAY_IMPORT[room] ?? []).flatMap((other) => [other, ...below(other)]);
    for (const room of Object.keys(ROOM_MAY_IMPORT)) expect(below(room)).not.toContain(room);
  });

  test("lets only the shell see every screen", () => {
    for (const [room, others] of Object.entries(ROOM_MAY_IMPORT)) {
      if (room === "shell") continue;
      expect(
        others.filter((other) => ["sittings", "sheets", "logbook", "deskFiles", "start", "shell"].includes(other)),
      ).toEqual([]);
    }
  });
});

describe.each(files.map((file) => [file.file, file] as const))("%s", (_, file) => {
  test("imports only rooms that its own may see", () => {
    const room = roomOf(file.file) ?? "";
    const allowed = ROOM_MAY_IMPORT[room]?.join(", ") || "no other room";
    expect(forbiddenRooms(file), `${room} may import ${allowed}; the table is ROOM_MAY_IMPORT in rooms.ts`).toEqual([]);
  });
});

test("no folders import each other in a circle, in any layer or room", () => {
  expect(circlesOfFolders(all), "what both need goes down into a folder of its own").toEqual([]);
});

test("no folder has more files of its own than a person looks through", () => {
  expect(crowdedFolders(names), `at most ${MOST_FILES} files`).toEqual([]);
});

test("no file is longer than a person reads at once", () => {
  expect(longFiles(all), `at most ${MOST_LINES} lines`).toEqual([]);
});

// A check that cannot fail proves nothing: here each is shown a violation.
describe("a planted violation is found", () => {
  test.each([
    { why: "a screen that knows another", file: "app/desk/A.tsx", text: 'import { B } from "../logbook/B";' },
    { why: "a part that knows a screen", file: "app/parts/A.tsx", text: 'import { B } from "../shell/B";' },
    {
      why: "a part that knows the trade",
      file: "app/parts/files/a.ts",
      text: 'import { b } from "../../../drill/odds";',
    },
    {
      why: "an exercise that knows the sittings",
      file: "app/exercises/bench/a.ts",
      text: 'import "../../sittings/b";',
    },
    {
      why: "a way into the store that knows an exercise",
      file: "app/keeping/a.ts",
      text: 'import type { B } from "../exercises/bench/b";',
    },
    { why: "a room that is not in the table", file: "app/attic/A.tsx", text: 'import { B } from "../parts/B";' },
  ])("$why", (planted) => {
    expect(forbiddenRooms(planted)).toHaveLength(1);
  });

  test("a long file", () => {
    const lines = (count: number): SourceFile => ({ file: "lock/a.ts", text: "a;\n".repeat(count) });
    expect(longFiles([lines(MOST_LINES + 1)])).toEqual([`lock/a.ts: ${MOST_LINES + 1}`]);
    expect(longFiles([lines(MOST_LINES)])).toEqual([]);
  });

  test("a crowded folder", () => {
    const crowd = Array.from({ length: MOST_FILES + 1 }, (_, k) => `app/desk/a${k}.ts`);
    expect(crowdedFolders(crowd)).toEqual([`app/desk: ${MOST_FILES + 1}`]);
    expect(crowdedFolders(crowd.slice(1))).toEqual([]);
  });

  const imports = (file: string, ...paths: string[]): SourceFile => ({
    file,
    text: paths.map((path) => `import { a } from "${path}";`).join("\n"),
  });

  test.each([
    {
      why: "two folders side by side",
      files: [imports("app/desk/a/b.ts", "../c/d"), imports("app/desk/c/d.ts", "../a/b")],
      circles: ["app/desk/a, app/desk/c"],
    },
    {
      why: "a folder and one inside it, by different files",
      files: [imports("drill/a.ts", "./sheet/b"), imports("drill/sheet/c.ts", "../d")],
      circles: ["drill, drill/sheet"],
    },
    {
      why: "a way round by a third, by types alone",
      files: [
        imports("lock/a/a.ts", "../b/b"),
        imports("lock/b/b.ts", "../c/c"),
        { file: "lock/c/c.ts", text: 'import type { A } from "../a/a";' },
      ],
      circles: ["lock/a, lock/b, lock/c"],
    },
    {
      why: "two circles, with a folder between them that is in none",
      files: [
        imports("app/a/a.ts", "../b/b"),
        imports("app/b/b.ts", "../a/a", "../m/m"),
        imports("app/m/m.ts", "../x/x"),
        imports("app/x/x.ts", "../y/y", "./own"),
        imports("app/y/y.ts", "../x/x"),
      ],
      circles: ["app/a, app/b", "app/x, app/y"],
    },
  ])("a circle of $why", ({ files, circles }) => {
    expect(circlesOfFolders(files)).toEqual(circles);
  });

  test("arrows that only lead down are no circle, nor are files of one folder", () => {
    const files = [
      imports("app/a/a.ts", "./b/b", "../c/c", "./own"),
      imports("app/a/own.ts", "./a"),
      imports("app/a/b/b.ts", "../../c/c"),
      imports("app/c/c.ts", "react"),
    ];
    expect(circlesOfFolders(files)).toEqual([]);
  });
});
