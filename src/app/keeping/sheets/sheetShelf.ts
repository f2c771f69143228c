import type { Sheet } from "../../../drill/sheet/sheet";
import type { SheetRecord } from "../../../records/records";
import { messageOf } from "../../parts/page/messageOf";
import { Store } from "../../parts/page/store";
import { draftBody } from "./readDraft";

/** Where own sheets are kept. */
export interface SheetKeeper {
  readonly all: () => Promise<readonly SheetRecord[]>;
  readonly keep: (record: SheetRecord) => Promise<void>;
  readonly drop: (id: string) => Promise<void>;
  /** Why nothing is kept just now, a sentence, or null. */
  readonly problem: () => string | null;
}

interface ShelfWorld {
  readonly now: () => number;
  readonly newId: () => string;
}

const MEMORY_ONLY =
  "Your sheets cannot be saved: this browser does not give access to its storage. Save each sheet as a file before you close this page.";
const PATIENCE_MS = 400;
const LONGEST_TITLE = 200;

const byTitle = (one: SheetRecord, other: SheetRecord) => one.title.localeCompare(other.title);

/** The own sheets. What is here is true for the page; keeping follows behind, and how it went is told in words. */
export class SheetShelf extends Store {
  /** Whether what was kept earlier is here. */
  isReady = false;
  /** Whether a change waits to be kept. */
  isKeeping = false;
  /** Why sheets are not kept, or null. */
  problem: string | null = null;
  /** The sheet deleted last, which can be brought back. */
  deleted: SheetRecord | null = null;
  private records: readonly SheetRecord[] = [];
  private keeper: SheetKeeper | null = null;
  private readonly world: ShelfWorld;
  private readonly waiting = new Set<string>();
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** @param opening - comes when the logbook has been opened, and fails where there is none */
  constructor(opening: Promise<SheetKeeper>, world: ShelfWorld) {
    super();
    this.world = world;
    this.open(opening);
  }

  /** Own sheets by title. */
  get own(): readonly SheetRecord[] {
    return this.records.toSorted(byTitle);
  }

  find(id: string): SheetRecord | null {
    return this.records.find((record) => record.id === id) ?? null;
  }

  /** Puts a new sheet on the shelf. @returns its id */
  add(sheet: Sheet): string {
    const id = this.world.newId();
    this.change(id, sheet);
    this.flush();
    return id;
  }

  /** Takes a sheet's new state; it is kept a moment later. */
  change(id: string, sheet: Sheet): void {
    const now = this.world.now();
    const title = (sheet.title.trim() === "" ? "Untitled" : sheet.title).slice(0, LONGEST_TITLE);
    const createdAt = this.find(id)?.createdAt ?? now;
    this.put({ id, title, createdAt, updatedAt: now, body: draftBody(sheet) as SheetRecord["body"] });
  }

  /** Keeps at once what waits. */
  async flush(): Promise<void> {
    clearTimeout(this.timer);
    const { keeper } = this;
    if (keeper === null) return;
    const due = [...this.waiting];
    this.waiting.clear();
    for (const id of due) {
      const record = this.find(id);
      if (record !== null) await this.tell(() => keeper.keep(record));
    }
    this.isKeeping = this.waiting.size > 0;
    this.changed();
  }

  async remove(id: string): Promise<void> {
    this.deleted = this.find(id);
    this.records = this.records.filter((record) => record.id !== id);
    this.waiting.delete(id);
    this.changed();
    const { keeper } = this;
    if (keeper !== null) await this.tell(() => keeper.drop(id));
    this.changed();
  }

  /** Brings the sheet deleted last back. It is seen once it is kept, so that what is seen outlasts the page. */
  async restore(): Promise<void> {
    const { deleted, keeper } = this;
    if (deleted === null) return;
    this.deleted = null;
    const record = { ...deleted, updatedAt: this.world.now() };
    if (keeper !== null) await this.tell(() => keeper.keep(record));
    this.put(record);
    await this.flush();
  }

  private put(record: SheetRecord): void {
    this.records = [...this.records.filter(({ id }) => id !== record.id), record];
    this.waiting.add(record.id);
    this.isKeeping = this.keeper !== null;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.flush(), PATIENCE_MS);
    this.changed();
  }

  private async open(opening: Promise<SheetKeeper>): Promise<void> {
    try {
      this.keeper = await opening;
      const kept = await this.keeper.all();
      const here = new Set([...this.records.map(({ id }) => id), this.deleted?.id]);
      this.records = [...this.records, ...kept.filter(({ id }) => !here.has(id))];
      this.problem = this.keeper.problem();
    } catch {
      this.problem = MEMORY_ONLY;
    }
    this.isReady = true;
    await this.flush();
    this.changed();
  }

  private async tell(act: () => Promise<void>): Promise<void> {
    try {
      await act();
      this.problem = this.keeper?.problem() ?? null;
    } catch (error) {
      this.problem = messageOf(error);
    }
  }
}
