import { wait_ms } from "../../../school/outbox/pace";
import { type BenchHears, type BenchTelling, benchHears, SILENCE_MS } from "../../../school/wire/liveWire";

/** As much of a WebSocket as is used. */
export type LiveSocket = Pick<WebSocket, "send" | "close" | "bufferedAmount" | "onmessage" | "onclose">;

/** What a link has of the outer world. */
export interface LinkWorld {
  /** Begins a connection. @throws where the browser refuses to */
  readonly open: () => LiveSocket;
  /** Milliseconds of a clock that only goes on. */
  readonly now: () => number;
  /** From 0 to below 1. */
  readonly chance: () => number;
  /** Acts after some time. @returns calls it off */
  readonly later: (act: () => void, wait_ms: number) => () => void;
}

/** What is told over a link, and what it says of itself. */
interface LinkCalls {
  readonly onHeard: (heard: BenchHears) => void;
  /** It has become live, or is not any more. */
  readonly onLive: (isLive: boolean) => void;
}

/** Failures in a row after which the wait grows no more: half a minute. */
const MOST_FAILURES = 5;
/** How long a server may take until it says something first, ms. */
const ANSWER_MS = 10_000;
/** Bytes that may wait in the browser; more is not sent, since what comes after it says all. */
const MOST_WAITING = 128 * 1024;
/** The server has a newer connection of this bench, or knows it no more: it is not made anew before that is asked for. */
const FINAL = [4000, 4001];

/**
 * The connection of a bench to its class, made anew after a while whenever it ends. Live from the first word of the server on;
 * what is sent while it is not is lost, so nothing that matters goes by it alone. Mutable.
 */
export class LiveLink {
  isLive = false;
  private readonly world: LinkWorld;
  private readonly calls: LinkCalls;
  private socket: LiveSocket | null = null;
  private failures = 0;
  private heardAt = 0;
  private callOff: (() => void) | null = null;

  constructor(world: LinkWorld, calls: LinkCalls) {
    this.world = world;
    this.calls = calls;
  }

  /** Connects at once unless it is connected, whatever it waited for, and whoever had the connection. */
  connectNow(): void {
    if (this.socket !== null) return;
    this.callOff?.();
    this.callOff = null;
    this.heardAt = this.world.now();
    try {
      this.hear(this.world.open());
    } catch {
      this.again();
    }
  }

  /** Ends the connection, and makes none until it is asked to. */
  end(): void {
    this.callOff?.();
    this.callOff = null;
    this.drop();
  }

  /** Ends a connection over which nothing has come for long: a network that is gone ends none by itself. */
  look(): void {
    const { socket, isLive } = this;
    if (socket === null || this.world.now() - this.heardAt < (isLive ? SILENCE_MS : ANSWER_MS)) return;
    this.drop();
    this.again();
  }

  /** Tells something. @returns whether it is on its way */
  tell(told: BenchTelling): boolean {
    const { socket, isLive } = this;
    if (socket === null || !isLive || socket.bufferedAmount > MOST_WAITING) return false;
    socket.send(JSON.stringify(told));
    return true;
  }

  private hear(socket: LiveSocket): void {
    this.socket = socket;
    socket.onmessage = ({ data }) => {
      if (this.socket === socket) this.take(String(data));
    };
    socket.onclose = ({ code }) => {
      if (this.socket !== socket) return;
      this.drop();
      if (!FINAL.includes(code)) this.again();
    };
  }

  private take(text: string): void {
    this.heardAt = this.world.now();
    this.failures = 0;
    if (!this.isLive) {
      this.isLive = true;
      this.calls.onLive(true);
    }
    const heard = readHeard(text);
    if (heard !== null) this.calls.onHeard(heard);
  }

  private drop(): void {
    const { socket } = this;
    this.socket = null;
    socket?.close();
    if (!this.isLive) return;
    this.isLive = false;
    this.calls.onLive(false);
  }

  private again(): void {
    this.failures = Math.min(MOST_FAILURES, this.failures + 1);
    const wait = wait_ms({ failures: this.failures, records: 1 }, this.world.chance());
    this.callOff = this.world.later(() => this.connectNow(), wait);
  }
}

/** What a server said; null for what one of another version may say. */
function readHeard(text: string): BenchHears | null {
  try {
    return benchHears.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
