import { dirname, join, normalize } from "node:path/posix";
import { importsOf, type SourceFile } from "./layers";

const COMMON = ["parts", "words"];
/** What stands under every screen: the lock in hand, pictures, replays, the way of a record into the store. */
const BENEATH = [...COMMON, "pictures", "replay", "hand", "keeping", "results"];

/** Each room of the app, and the rooms it may import. DEVELOPERS.md shows the same table to people. */
export const ROOM_MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  parts: [],
  words: ["parts"],
  pictures: COMMON,
  replay: [...COMMON, "pictures"],
  hand: [...COMMON, "replay"],
  keeping: COMMON,
  results: [...COMMON, "pictures", "keeping"],
  exercises: BENEATH,
  // What a sitting came to, from its record alone.
  verdicts: [...COMMON, "pictures", "replay", "results"],
  // A sitting puts the exercises under the candidate's hand.
  sittings: [...BENEATH, "verdicts", "exercises"],
  sheets: BENEATH,
  logbook: BENEATH,
  desk: BENEATH,
  // The class desk is the same wherever its records are.
  deskFiles: [...BENEATH, "desk"],
  start: BENEATH,
  setup: BENEATH,
  // A bench of a class.
  school: [...COMMON, "keeping"],
  // An instructor of a class server, who reads a result as its candidate does.
  classroom: [...BENEATH, "verdicts", "school", "desk"],
  shell: [
    ...BENEATH,
    "exercises",
    "sittings",
    "sheets",
    "logbook",
    "deskFiles",
    "start",
    "setup",
    "school",
    "classroom",
  ],
};

/** Layers that the parts may build on: they know nothing of the trade. */
const BELOW_PARTS = ["wording", "lock", "statistics"];

/** Most files that a folder has of its own. */
export const MOST_FILES = 25;

/** Most lines that a file has: one idea is told in less. */
export const MOST_LINES = 250;

/** Files longer than a person reads at once. */
export function longFiles(files: readonly SourceFile[]): string[] {
  return files.flatMap(({ file, text }) => {
    const lines = text.split("\n").length - 1;
    return lines > MOST_LINES ? [`${file}: ${lines}`] : [];
  });
}

/** The room a path inside src belongs to; undefined for a file that lies in none. */
export function roomOf(file: string): string | undefined {
  const [layer, room, ...rest] = file.split("/");
  return layer === "app" && rest.length > 0 ? room : undefined;
}

/** Imports that leave a file's room for one that it may not see; of parts, also those of a layer that knows the trade. */
export function forbiddenRooms({ file, text }: SourceFile): string[] {
  const room = roomOf(file);
  if (room === undefined) return [];
  return importsOf(text)
    .filter((path) => path.startsWith("."))
    .filter((path) => {
      const target = normalize(join(dirname(file), path));
      const other = roomOf(target);
      if (other === undefined) return room === "parts" && !BELOW_PARTS.includes(target.split("/")[0] ?? "");
      return other !== room && !ROOM_MAY_IMPORT[room]?.includes(other);
    });
}

/** Folders with more files of their own than a person looks through. */
export function crowdedFolders(files: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const file of files) counts.set(dirname(file), (counts.get(dirname(file)) ?? 0) + 1);
  return [...counts].flatMap(([folder, count]) => (count > MOST_FILES ? [`${folder}: ${count}`] : []));
}

/** What each folder's own files import of other folders' own files: a folder inside another is a folder like any other. */
function importsOfFolders(files: readonly SourceFile[]): Map<string, Set<string>> {
  const imports = new Map<string, Set<string>>();
  for (const { file, text } of files) {
    const folder = dirname(file);
    const seen = imports.get(folder) ?? new Set();
    imports.set(folder, seen);
    for (const path of importsOf(text).filter((path) => path.startsWith("."))) seen.add(dirname(join(folder, path)));
    seen.delete(folder);
  }
  return imports;
}

/** Folders that import each other in a circle, directly or by way of others: each circle once, its folders in order of name. */
export function circlesOfFolders(files: readonly SourceFile[]): string[] {
  const imports = importsOfFolders(files);
  const reachedFrom = (folder: string): Set<string> => {
    const reached = new Set(imports.get(folder));
    // A set hands out what is added while it is gone through.
    for (const next of reached) for (const other of imports.get(next) ?? []) reached.add(other);
    return reached;
  };
  const reach = new Map([...imports.keys()].sort().map((folder) => [folder, reachedFrom(folder)]));
  const circleOf = ([folder, reached]: [string, Set<string>]) =>
    [...reach.keys()].filter((other) => reached.has(other) && reach.get(other)?.has(folder)).join(", ");
  return [...new Set([...reach].map(circleOf))].filter((circle) => circle !== "");
}
