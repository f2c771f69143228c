import * as z from "zod/mini";
import { fromBase64, toBase64 } from "../../records/motion/base64";
import { decodeTrace } from "../../records/motion/traceCodec";
import type { Logbook } from "../../store/logbook";
import { checkWrite, type LogbookWrite } from "../../store/logbookWrite";
import { keysUnder, type PageStore, storeText } from "../parts/storage/pageStore";
import { WAITING_PREFIX as PREFIX } from "./traces";

/** What could not be read is set aside, not thrown away. */
const UNREAD = "gatefall.unread.";

const keptSchema = z.array(
  z.object({
    kind: z.string(),
    record: z.looseObject({ id: z.string() }),
    only: z.optional(z.enum(["if-missing", "if-nobody"])),
    trace: z.optional(z.string()),
  }),
);

const textOf = (writes: readonly LogbookWrite[]): string =>
  JSON.stringify(
    writes.map((write) =>
      write.kind === "attempts" && write.trace !== undefined ? { ...write, trace: toBase64(write.trace) } : write,
    ),
  );

/** A write as it was, checked. @throws where it cannot be read */
function writeOf({ trace, ...kept }: z.infer<typeof keptSchema>[number]): LogbookWrite {
  const bytes = trace === undefined ? undefined : fromBase64(trace);
  if (bytes !== undefined) decodeTrace(bytes);
  const write = { ...kept, ...(bytes !== undefined && { trace: bytes }) } as unknown as LogbookWrite;
  checkWrite(write);
  return write;
}

/** The writes of a text, or null where one of them cannot be read. */
function writesOf(text: string): LogbookWrite[] | null {
  try {
    return keptSchema.parse(JSON.parse(text)).map(writeOf);
  } catch {
    return null;
  }
}

/**
 * Records that the database does not take, as text beside it: a page that is closed or reloaded before they can be stored
 * leaves them to the next one.
 */
export class WaitingShelf {
  private readonly store: PageStore | null;
  private readonly key: string;
  private kept: readonly LogbookWrite[] = [];

  /**
   * @param store - null where the browser has none
   * @param page - names this page among all that are open
   */
  constructor(store: PageStore | null, page: string) {
    this.store = store;
    this.key = PREFIX + page;
  }

  /** Keeps what waits now in place of what waited before. @returns whether nothing that waits would go with the page */
  keep(writes: readonly LogbookWrite[]): boolean {
    if (writes === this.kept) return true;
    const isStored = storeText(this.key, writes.length === 0 ? null : textOf(writes), this.store);
    if (isStored) this.kept = writes;
    // Where there is no room here either, they wait in memory alone.
    return isStored || writes.length === 0;
  }

  /** Stores what pages before this one could not; what cannot be stored now stays here for later. */
  async handOver(logbook: Logbook): Promise<void> {
    for (const key of keysUnder(PREFIX, this.store).filter((one) => one !== this.key)) {
      const text = this.store?.getItem(key) ?? "[]";
      const writes = writesOf(text);
      if (writes === null) this.store?.setItem(key.replace(PREFIX, UNREAD), text);
      else await logbook.adopt(writes);
      this.store?.removeItem(key);
    }
  }
}
