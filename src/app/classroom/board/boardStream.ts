import { boardAfter, type LiveBoard } from "../../../school/live/liveBoard";
import { wait_ms } from "../../../school/outbox/pace";
import { boardEvent, SILENCE_MS } from "../../../school/wire/liveWire";
import { Store } from "../../parts/page/store";

/** As much of an EventSource as is used. */
export type BoardSource = Pick<EventSource, "readyState" | "close" | "onmessage" | "onerror" | "addEventListener">;

/** What a stream has of the outer world. */
export interface StreamWorld {
  readonly open: () => BoardSource;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** From 0 to below 1. */
  readonly chance: () => number;
  /** Acts after some time. @returns calls it off */
  readonly later: (act: () => void, wait_ms: number) => () => void;
  /** The server has refused the stream: whoever looks at it may be signed out. */
  readonly onRefused: () => void;
}

/** The connection is ended for good, and the browser makes it anew no more (HTML standard, 9.2). */
const CLOSED = 2;
/** How often one looks whether the server is silent, and how long ago things were, ms. */
const LOOK_MS = 5000;
/** Failures in a row after which the wait grows no more: half a minute. */
const MOST_FAILURES = 5;

/** The benches of a class as its server tells them, as long as the page is connected. A store. */
export class BoardStream extends Store {
  board: LiveBoard = new Map();
  /** Whether it has heard from the server and is still connected. */
  isLive = false;
  /** When the page was connected last, milliseconds since 1970; null while it is, and before it ever was. */
  lostAt: number | null = null;
  private readonly world: StreamWorld;
  private source: BoardSource | null = null;
  private heardAt = 0;
  private failures = 0;
  /** How far the server's clock is ahead of the page's, ms. */
  private ahead_ms = 0;
  private readonly callOffs = new Map<"look" | "again", () => void>();

  constructor(world: StreamWorld) {
    super();
    this.world = world;
  }

  /** Now, by the server's clock, milliseconds since 1970. */
  get serverNow(): number {
    return this.world.now() + this.ahead_ms;
  }

  /** Connects. @returns ends it */
  begin(): () => void {
    this.connect();
    this.later("look", LOOK_MS, () => this.look());
    return () => {
      this.source?.close();
      this.source = null;
      for (const callOff of this.callOffs.values()) callOff();
    };
  }

  private connect(): void {
    const source = this.world.open();
    this.source = source;
    this.heardAt = this.world.now();
    const ours = (act: () => void) => {
      if (this.source === source) act();
    };
    source.onmessage = ({ data }) => ours(() => this.take(String(data)));
    source.addEventListener("here", () => ours(() => this.hear()));
    source.onerror = () => ours(() => this.lose(source));
  }

  /** Something has come: it is live. */
  private hear(): void {
    this.heardAt = this.world.now();
    this.failures = 0;
    const isNews = !this.isLive;
    this.isLive = true;
    this.lostAt = null;
    if (isNews) this.changed();
  }

  private take(text: string): void {
    const event = readEvent(text);
    if (event === null) return;
    this.hear();
    this.board = boardAfter(this.board, event);
    this.ahead_ms = event.now - this.world.now();
    this.changed();
  }

  private lose(source: BoardSource): void {
    if (this.isLive) this.lostAt = this.world.now();
    this.isLive = false;
    this.changed();
    // What was only cut off the browser connects anew by itself, and hears what has changed since.
    if (source.readyState !== CLOSED) return;
    this.world.onRefused();
    this.again();
  }

  private again(): void {
    this.source?.close();
    this.source = null;
    this.failures = Math.min(MOST_FAILURES, this.failures + 1);
    this.later("again", wait_ms({ failures: this.failures, records: 1 }, this.world.chance()), () => this.connect());
  }

  /** Ends a connection over which nothing has come for long; and times that are told go on. */
  private look(): void {
    const { source } = this;
    if (source !== null && this.world.now() - this.heardAt > SILENCE_MS) {
      if (this.isLive) this.lostAt = this.heardAt;
      this.isLive = false;
      this.again();
    }
    this.changed();
    this.later("look", LOOK_MS, () => this.look());
  }

  private later(what: "look" | "again", wait: number, act: () => void): void {
    this.callOffs.get(what)?.();
    this.callOffs.set(what, this.world.later(act, wait));
  }
}

/** What a server told; null for what one of another version may tell. */
function readEvent(text: string) {
  try {
    return boardEvent.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
