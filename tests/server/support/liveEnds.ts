import { get, type IncomingMessage } from "node:http";
import type { BenchHears, BenchTelling, BoardEvent } from "../../../src/school/wire/liveWire";
import type { TestBench } from "./testBench";
import type { Browser, TestServer } from "./testSchool";

const cookieHeader = (cookies: Readonly<Record<string, string>>) =>
  Object.entries(cookies)
    .map(([name, value]) => `${name}=${value}`)
    .join("; ");

/** Hands things on to whoever waits for one that fits, also where it came before. */
class Heard<One> {
  readonly all: One[] = [];
  private readonly waiting = new Set<() => void>();

  add(one: One): void {
    this.all.push(one);
    for (const look of this.waiting) look();
  }

  until(fits: (one: One) => boolean): Promise<One> {
    return new Promise((resolve) => {
      const look = () => {
        const found = this.all.find(fits);
        if (found === undefined) return;
        this.waiting.delete(look);
        resolve(found);
      };
      this.waiting.add(look);
      look();
    });
  }
}

/** A bench that is connected to a server. */
export interface LiveEnd {
  readonly tell: (told: BenchTelling | string) => void;
  readonly hears: Heard<BenchHears>;
  /** The code that the connection was closed with. */
  readonly closed: Promise<number>;
  readonly leave: () => void;
  /** Answers nothing more, as a machine whose network is gone, and closes nothing. */
  readonly fallSilent: () => void;
}

/** Connects a bench. @param headers - further ones, of a page of another server */
export async function connectBench(
  { server }: TestServer,
  { cookies }: Pick<TestBench, "cookies">,
  headers: Readonly<Record<string, string>> = {},
): Promise<LiveEnd> {
  const hears = new Heard<BenchHears>();
  let closed: Promise<number> = Promise.resolve(0);
  let isSilent = false;
  const socket = await server.injectWS(
    "/api/bench/live",
    { headers: { cookie: cookieHeader(cookies), ...headers } },
    {
      onInit(ws) {
        ws.on("message", (data) => hears.add(JSON.parse(String(data))));
        // What a browser does by itself.
        ws.on("ping", (data) => isSilent || ws.pong(data));
        closed = new Promise((resolve) => ws.on("close", resolve));
      },
    },
  );
  return {
    tell: (told) => socket.send(typeof told === "string" ? told : JSON.stringify(told)),
    hears,
    closed,
    leave: () => socket.terminate(),
    fallSilent() {
      isSilent = true;
    },
  };
}

/** The status with which a connection of somebody who is no bench is refused, asked for over a socket of its own. */
export const strangerStatus = ({ server }: TestServer): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    const handshake = { "sec-websocket-version": "13", "sec-websocket-key": "AAAAAAAAAAAAAAAAAAAAAA==" };
    const headers = { connection: "Upgrade", upgrade: "websocket", ...handshake };
    get(`${server.listeningOrigin}/api/bench/live`, { headers, agent: false }, (answer) => {
      answer.resume();
      resolve(answer.statusCode);
    }).on("error", reject);
  });

/** A board that listens. */
export interface BoardEnd {
  readonly status: number;
  readonly events: Heard<BoardEvent & { readonly id: string }>;
  readonly leave: () => void;
}

/** Opens the board of a class at a server that listens. @param lastId - what it heard last before */
export async function openBoard(
  { server }: TestServer,
  classId: string,
  { cookies }: Pick<Browser, "cookies">,
  lastId?: string,
): Promise<BoardEnd> {
  const headers = {
    cookie: cookieHeader(cookies),
    ...(lastId === undefined ? {} : { "last-event-id": lastId }),
  };
  const url = `${server.listeningOrigin}/api/classes/${classId}/live`;
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    get(url, { headers, agent: false }, resolve).on("error", reject);
  });
  const events: BoardEnd["events"] = new Heard();
  if (answer.statusCode === 200) void readEvents(answer, events).catch(() => undefined);
  else answer.resume();
  return { status: answer.statusCode ?? 0, events, leave: () => answer.destroy() };
}

async function readEvents(answer: IncomingMessage, events: BoardEnd["events"]): Promise<void> {
  let text = "";
  const decoder = new TextDecoder();
  for await (const piece of answer) {
    text += decoder.decode(piece, { stream: true });
    const parts = text.split("\n\n");
    text = parts.pop() ?? "";
    for (const part of parts) {
      const found = /^id: (.+)\ndata: (.+)$/.exec(part);
      if (found) events.add({ ...JSON.parse(found[2] ?? ""), id: found[1] });
    }
  }
}
