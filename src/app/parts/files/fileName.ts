import { harmlessName } from "../../../lock/harmlessText";

/** What the name of a saved file tells. */
export interface NamedFile {
  /** What it holds: "attempts", "record Friday test". */
  readonly what: string;
  /** Whose it is; null or left out where it is of nobody, or of everyone. */
  readonly person?: string | null | undefined;
  /** When it was made, or what it tells of happened: milliseconds since 1970. */
  readonly at: number;
  /** With no dot: "csv". */
  readonly ending: string;
}

/** Bytes of a part that are kept (UTF-8): most file systems take 255 in all, and there are two such parts. */
const LONGEST_PART = 90;

const bytesOf = (text: string) => new TextEncoder().encode(text).length;

/** As many whole letters as fit. */
function cut(text: string): string {
  let kept = "";
  for (const letter of text) {
    if (bytesOf(kept) + bytesOf(letter) > LONGEST_PART) break;
    kept += letter;
  }
  return kept;
}

/** Letters, marks and digits of any script; everything else becomes a hyphen. */
const plain = (text: string) =>
  cut(
    harmlessName(text)
      .normalize("NFC")
      .replace(/[^\p{L}\p{M}\p{N}]+/gu, "-")
      .replace(/^-+/, ""),
  ).replace(/-+$/, "");

const twoDigits = (value: number) => String(value).padStart(2, "0");

/** "2026-11-28-1405", by the clock of this device. */
function timeText(at: number): string {
  const date = new Date(at);
  const day = [date.getFullYear(), twoDigits(date.getMonth() + 1), twoDigits(date.getDate())].join("-");
  return `${day}-${twoDigits(date.getHours())}${twoDigits(date.getMinutes())}`;
}

/**
 * The name of a file to be saved, with what it is, whose and of when: "gatefall-attempts-Mibsy-2026-11-28-1405.csv".
 * Every export is named here, so that files of a class do not take each other's place in one folder.
 */
export function fileNameOf({ what, person, at, ending }: NamedFile): string {
  const parts = ["gatefall", plain(what), plain(person ?? ""), timeText(at)];
  return `${parts.filter((part) => part !== "").join("-")}.${ending}`;
}
