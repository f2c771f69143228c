import type { AttemptRecord } from "../../../records/attemptRecord";
import { attemptsAt, placeOf } from "../../../store/attemptPlaces";
import { type AttemptFilter, attemptPage, countAttempts } from "../../../store/attemptQueries";
import type { Logbook } from "../../../store/logbook";
import { runningAmong } from "../../../store/sittingQueries";
import { messageOf } from "../../parts/page/messageOf";
import { Store } from "../../parts/page/store";

/** Attempts that are read at once. */
export const BLOCK = 50;

/** Blocks that are held at most; those farthest from the view go first. */
const MOST_BLOCKS = 20;

/** Places that are looked at, both counted from 0 and both in view. */
interface View {
  readonly first: number;
  readonly last: number;
}

/** Attempts from a place that is a whole number of blocks, and which of their sittings have not ended. */
interface Block {
  readonly attempts: readonly AttemptRecord[];
  readonly running: ReadonlySet<string>;
}

/** A list of attempts as it was at one moment. */
interface Shown {
  /** The filter, by which two answers are known to be of one list. */
  readonly name: string;
  readonly filter: AttemptFilter;
  readonly count: number;
  readonly blocks: Map<number, Block>;
}

const TOP: View = { first: 0, last: 0 };

const blockOf = (place: number) => Math.floor(place / BLOCK);

/** Numbers of the blocks over a view. */
function blocksOver({ first, last }: View): readonly number[] {
  const from = blockOf(first);
  return Array.from({ length: blockOf(last) - from + 1 }, (_, i) => from + i);
}

/** The attempts of a filter, latest first, of which those near the view are in memory. */
export class AttemptWindow extends Store {
  private readonly logbook: Logbook;
  private shown: Shown | null = null;
  private view = TOP;
  /** Questions asked; an answer to an earlier one is late. */
  private asked = 0;
  private isReading = false;
  /** Attempts that have come in above the view since this was made. */
  moved = 0;
  problem: string | null = null;

  constructor(logbook: Logbook) {
    super();
    this.logbook = logbook;
  }

  /** How many attempts the filter finds, or null before that is known. */
  get count(): number | null {
    return this.shown?.count ?? null;
  }

  /** Another name is another list, which begins at its top. */
  get name(): string {
    return this.shown?.name ?? "";
  }

  /** The attempt at a place, or null while it is not in memory. */
  at(place: number): AttemptRecord | null {
    return this.shown?.blocks.get(blockOf(place))?.attempts[place % BLOCK] ?? null;
  }

  /** Whether an attempt is a try of a sitting that goes on: what it came to is told when that has ended. */
  isUntold(place: number): boolean {
    const sittingId = this.at(place)?.sittingId;
    return sittingId !== undefined && this.shown?.blocks.get(blockOf(place))?.running.has(sittingId) === true;
  }

  /** Places of the attempts in memory, in order. */
  get held(): readonly number[] {
    const blocks = [...(this.shown?.blocks ?? [])].toSorted(([one], [other]) => one - other);
    return blocks.flatMap(([number, { attempts }]) => attempts.map((_, i) => number * BLOCK + i));
  }

  /** Shows the attempts of a filter as they are now. What was shown stays until they are there. Never throws. */
  async ask(filter: AttemptFilter): Promise<void> {
    this.asked += 1;
    const { asked } = this;
    const name = JSON.stringify(filter);
    try {
      const moved = this.name === name ? await this.movedSince(filter) : 0;
      const { first, last } = this.name === name ? this.view : TOP;
      const wanted = blocksOver({ first: first + moved, last: last + moved });
      const [count, ...read] = await Promise.all([
        countAttempts(this.logbook, filter),
        ...wanted.map((number) => this.readBlock(filter, number)),
      ]);
      if (asked !== this.asked) return;
      // The view may have gone on meanwhile.
      this.view = this.name === name ? { first: this.view.first + moved, last: this.view.last + moved } : TOP;
      this.moved += moved;
      this.shown = { name, filter, count, blocks: new Map(read.map((block, i) => [wanted[i] ?? 0, block])) };
      this.problem = null;
      this.readMissing();
    } catch (error) {
      if (asked !== this.asked) return;
      this.problem = messageOf(error);
    }
    this.changed();
  }

  /** Tells which places are looked at; those that are not in memory are read. */
  look(first: number, last: number): void {
    this.view = { first: Math.max(0, first), last: Math.max(0, Math.min(last, (this.count ?? 1) - 1)) };
    this.readMissing();
  }

  private readMissing(): void {
    if (!this.isReading) this.readView();
  }

  /** How many attempts have come in above the view since the answer that is shown. */
  private async movedSince(filter: AttemptFilter): Promise<number> {
    const { first } = this.view;
    const top = this.at(first);
    return top === null ? 0 : (await placeOf(this.logbook, filter, top)) - first;
  }

  /** Reads the view, block by block. The view may move meanwhile: what it has passed is not read. */
  private async readView(): Promise<void> {
    this.isReading = true;
    try {
      for (;;) {
        const { shown } = this;
        const missing = blocksOver(this.view).find((number) => shown?.blocks.has(number) === false);
        if (shown === null || missing === undefined) return;
        const block = await this.readBlock(shown.filter, missing, this.at(missing * BLOCK - 1));
        if (shown !== this.shown) continue;
        shown.blocks.set(missing, block);
        this.dropFarthest(shown.blocks, missing);
        this.changed();
      }
    } catch (error) {
      this.problem = messageOf(error);
      this.changed();
    } finally {
      this.isReading = false;
    }
  }

  /** Reads a block: on from the attempt above it where that is in memory, else from its place. */
  private async readBlock(filter: AttemptFilter, number: number, above: AttemptRecord | null = null): Promise<Block> {
    const { logbook } = this;
    const attempts =
      above === null
        ? await attemptsAt(logbook, filter, number * BLOCK, BLOCK)
        : (await attemptPage(logbook, filter, BLOCK, { startedAt: above.startedAt, id: above.id })).attempts;
    const sittings = new Set(attempts.flatMap(({ sittingId }) => sittingId ?? []));
    return { attempts, running: await runningAmong(logbook, sittings) };
  }

  private dropFarthest(blocks: Map<number, Block>, from: number): void {
    if (blocks.size <= MOST_BLOCKS) return;
    const far = [...blocks.keys()].reduce((one, other) =>
      Math.abs(other - from) > Math.abs(one - from) ? other : one,
    );
    blocks.delete(far);
  }
}
