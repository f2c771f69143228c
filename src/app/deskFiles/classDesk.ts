import { DEMO_SEED, demoLogbook } from "../../progress/demo/demoLogbook";
import { contentsOf, joinContents, type LogbookContents } from "../../records/logbookContents";
import { sameRecordings } from "../../records/motion/sameRecordings";
import type { Problem } from "../../wording/problem";
import type { DeskLogbook } from "../desk/classView";
import { LogbookReader } from "../keeping/reader/logbookReader";
import type { ReadingState } from "../keeping/reader/readingWords";
import { messageOf } from "../parts/page/messageOf";
import { Store } from "../parts/page/store";

/** A logbook on the desk. */
export interface DeskFile extends DeskLogbook {
  readonly key: number;
  readonly isDemo: boolean;
  /** Attempts that their recordings do not bear out, and which do not count, a sentence each. */
  readonly leftOut: readonly Problem[];
}

/** A file that no logbook could be read from, and why. */
export interface DeskProblem {
  readonly key: number;
  readonly name: string;
  readonly sentence: string;
}

const DEMO_NAME = "Demo class, invented";

/** The logbooks of a class, held in this tab alone: nothing is written anywhere. A store. */
export class ClassDesk extends Store {
  files: readonly DeskFile[] = [];
  problems: readonly DeskProblem[] = [];
  /** Recordings that come under more than one name or attempt, in sentences. */
  copies: readonly string[] = [];
  /** The file being read, or null. */
  reading: ReadingState | null = null;
  private readonly reader: LogbookReader;
  private waiting: File[] = [];
  private chosen = 0;
  private keys = 0;

  /** @param reader - reads the files; one that works in a web worker if left out */
  constructor(reader = new LogbookReader()) {
    super();
    this.reader = reader;
  }

  /** Whether the demo class lies on the desk. */
  get hasDemo(): boolean {
    return this.files.some(({ isDemo }) => isDemo);
  }

  /** All that came by file in one logbook; no invented people, and no settings of other machines. */
  get brought(): LogbookContents {
    const joined = joinContents(this.files.filter(({ isDemo }) => !isDemo).map(({ contents }) => contents));
    return contentsOf(new Set(joined.records.people.map(({ id }) => id)), joined);
  }

  /** Reads files, one after another; a bad one is told among the problems, and the others stay. Never throws. */
  async add(files: readonly File[]): Promise<void> {
    this.waiting.push(...files);
    this.chosen += files.length;
    if (this.reading !== null) return;
    this.problems = [];
    for (let file = this.waiting.shift(); file !== undefined; file = this.waiting.shift()) await this.read(file);
    this.reader.close();
    this.chosen = 0;
    this.reading = null;
    this.lookForCopies();
    this.changed();
  }

  /** Stops reading; files that are read already stay. */
  stop(): void {
    this.waiting = [];
    this.reader.stop();
  }

  /** Takes a file off the desk. */
  remove(key: number): void {
    this.files = this.files.filter((file) => file.key !== key);
    this.lookForCopies();
    this.changed();
  }

  /** The files that were not read are known; nothing more is said of them. */
  closeProblems(): void {
    this.problems = [];
    this.changed();
  }

  /** Takes everything off the desk. */
  clear(): void {
    this.files = [];
    this.problems = [];
    this.copies = [];
    this.changed();
  }

  /**
   * Lays the demo class on the desk, once.
   *
   * @param now - milliseconds since 1970; its week ends before
   */
  loadDemo(now: number): void {
    if (this.hasDemo) return;
    this.take(DEMO_NAME, demoLogbook(DEMO_SEED, now), true);
    this.changed();
  }

  /** Takes the demo class off the desk. */
  removeDemo(): void {
    this.files = this.files.filter(({ isDemo }) => !isDemo);
    this.changed();
  }

  /** The demo class is invented, and never compared. */
  private lookForCopies(): void {
    this.copies = sameRecordings(this.files.filter(({ isDemo }) => !isDemo).map(({ contents }) => contents));
  }

  private take(name: string, contents: LogbookContents, isDemo: boolean, leftOut: readonly Problem[] = []): void {
    this.keys += 1;
    this.files = [...this.files, { key: this.keys, name, contents, isDemo, leftOut }];
  }

  private async read(file: File): Promise<void> {
    const at = { name: file.name, place: this.chosen - this.waiting.length, files: this.chosen };
    const tell = (progress: ReadingState["progress"]) => {
      this.reading = { ...at, files: this.chosen, progress };
      this.changed();
    };
    tell(null);
    try {
      const read = await this.reader.readReplayed(file, tell);
      if (read !== null) this.take(file.name, read.contents, false, read.leftOut);
    } catch (error) {
      this.keys += 1;
      this.problems = [...this.problems, { key: this.keys, name: file.name, sentence: messageOf(error) }];
    }
  }
}
