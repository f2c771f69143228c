import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { describe, expect, test } from "vitest";
import type { SourceFile } from "./layers";
import { crowdedFolders, forbiddenRooms, longFiles, MOST_FILES, MOST_LINES, ROOM_MAY_IMPORT, roomOf } from "./rooms";

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
        others.filter((other) => ["sittings", "sheets", "logbook", "desk", "start", "shell"].includes(other)),
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
});
