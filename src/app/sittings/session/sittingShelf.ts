import type { Motion } from "../../../dialing/motion";
import type { AnswerGiven } from "../../../drill/questions/questionDifficulty";
import { sittingPlan } from "../../../drill/sitting/sittingPlan";
import type { AttemptOutcome } from "../../../records/attemptOutcome";
import { outcomeSchema } from "../../../records/attemptRecord";
import { motionOfText } from "../../../records/motion/traceCodec";
import { pageStore, storedText, storeText, type TextStore } from "../../parts/storage/pageStore";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { readProgress, type SittingProgress } from "./sittingProgress";

/** Key of the sitting under way. */
export const PROGRESS_KEY = "gatefall.sitting";
const SEEN = "gatefall.sitting.seen";
const MOTION = "gatefall.sitting.motion.";
const OUTCOME = "gatefall.sitting.outcome.";
const RECORDS = "gatefall.sittings";
const ANSWERS = "gatefall.answers";
const MOST_RECORDS = 20;
const MOST_ANSWERS = 5000;

/**
 * What this browser keeps of sittings: the one under way, the motions of its tries or what they came to, records, and answers given.
 *
 * Nothing here throws: where the browser keeps nothing, a sitting lasts as long as the page, and `isKeeping` says so.
 */
export class SittingShelf {
  isKeeping = true;
  private readonly store: TextStore;

  /** @param store - has texts safe before the next event; null where nothing is kept */
  constructor(store: TextStore = pageStore()) {
    this.store = store;
  }

  /** The sitting under way, or the last one that has not been put away. */
  get progress(): SittingProgress | null {
    const progress = readProgress(this.get(PROGRESS_KEY));
    const [seen = 0, wall = seen] = (this.get(SEEN) ?? "").split(" ").map(Number);
    if (progress === null || !(seen > progress.lastSeen_ms)) return progress;
    return { ...progress, lastSeen_ms: seen, lastWall_ms: wall };
  }

  keepProgress(progress: SittingProgress): void {
    this.set(PROGRESS_KEY, JSON.stringify(progress));
  }

  /** Notes that the sitting still goes on. @param wall_ms - the same moment by the clock on the wall */
  keepSeen(now_ms: number, wall_ms = now_ms): void {
    this.set(SEEN, `${now_ms} ${wall_ms}`);
  }

  /** @param packed - as `motionText` gives it */
  keepMotion(index: number, packed: string): void {
    this.set(MOTION + index, packed);
  }

  /** Motion of a try as it is packed in a record, or null where none is kept, or not one that can be read. */
  packedMotion(index: number): string | null {
    return this.motion(index) === null ? null : this.get(MOTION + index);
  }

  /** Motion of a try, or null where none is kept. */
  motion(index: number): Motion | null {
    const text = this.get(MOTION + index);
    try {
      return text === null ? null : motionOfText(text);
    } catch {
      return null;
    }
  }

  /** @param outcome - of a try whose motion may not be kept: nothing else can tell of it after a kill */
  keepOutcome(index: number, outcome: AttemptOutcome): void {
    this.set(OUTCOME + index, JSON.stringify(outcome));
  }

  /** What a try came to whose motion may not be kept, or null where nothing is kept of it that can be read. */
  outcome(index: number): AttemptOutcome | null {
    const text = this.get(OUTCOME + index);
    try {
      return text === null ? null : (outcomeSchema.safeParse(JSON.parse(text)).data ?? null);
    } catch {
      return null;
    }
  }

  /** Puts the sitting away, with all that is kept of its tries. */
  clear(tries: number): void {
    for (let index = 0; index < tries; index++) {
      this.set(MOTION + index, null);
      this.set(OUTCOME + index, null);
    }
    this.set(PROGRESS_KEY, null);
    this.set(SEEN, null);
  }

  /** Records of this browser, newest first. */
  get records(): readonly KeptRecord[] {
    return this.list<KeptRecord>(RECORDS);
  }

  /** Records hold their recordings, so a few long ones may be more than there is room for: then the oldest go first. */
  keepRecord(kept: KeptRecord): void {
    const all = [kept, ...this.records.filter(({ id }) => id !== kept.id)].slice(0, MOST_RECORDS);
    for (let count = all.length; count > 1; count = Math.floor(count / 2)) {
      if (storeText(RECORDS, JSON.stringify(all.slice(0, count)), this.store)) return;
    }
    this.set(RECORDS, JSON.stringify([kept]));
  }

  /** Forgets sittings whose person is deleted: their records, and the one that has not been put away. */
  forget(ids: ReadonlySet<string>): void {
    const { progress, records } = this;
    const left = records.filter(({ id }) => !ids.has(id));
    if (left.length < records.length) this.set(RECORDS, JSON.stringify(left));
    if (progress !== null && ids.has(progress.id)) this.clear(sittingPlan(progress.sheet).tries);
  }

  /** Answers given in this browser, oldest first. */
  get answers(): readonly AnswerGiven[] {
    return this.list<AnswerGiven>(ANSWERS);
  }

  keepAnswer({ questionId, isRight }: AnswerGiven): void {
    this.set(ANSWERS, JSON.stringify([...this.answers, { questionId, isRight }].slice(-MOST_ANSWERS)));
  }

  private list<Item>(key: string): readonly Item[] {
    try {
      const value: unknown = JSON.parse(this.get(key) ?? "[]");
      return Array.isArray(value) ? value : [];
    } catch {
      return [];
    }
  }

  private get(key: string): string | null {
    return storedText(key, this.store);
  }

  private set(key: string, text: string | null): void {
    if (!storeText(key, text, this.store)) this.isKeeping = false;
  }
}
