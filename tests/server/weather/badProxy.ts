import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { buffer } from "node:stream/consumers";
import type { Chance } from "../../../src/statistics/chance";

/** What a bad network does to a request. */
const DEEDS = ["pass", "cut-before", "cut-half", "cut-after", "double", "late", "late-double"] as const;

type Deed = (typeof DEEDS)[number];

const LATEST_ms = 400;

const sleep = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/**
 * A bad network in front of a server: requests are cut before they come, in the middle and after they were done, come late
 * and so out of their order, come twice, and twice at once.
 */
export class BadProxy {
  /** How often it did what. */
  readonly done: Record<Deed, number> = {
    pass: 0,
    "cut-before": 0,
    "cut-half": 0,
    "cut-after": 0,
    double: 0,
    late: 0,
    "late-double": 0,
  };
  private readonly server: Server;
  private readonly to: string;
  private readonly chance: Chance;

  private constructor(to: string, chance: Chance) {
    this.to = to;
    this.chance = chance;
    this.server = createServer((request, response) => {
      void this.handle(request, response).catch(() => response.destroy());
    });
  }

  /** A proxy that listens, before the server at an address. */
  static async before(to: string, chance: Chance): Promise<BadProxy> {
    const proxy = new BadProxy(to, chance);
    await new Promise<void>((resolve) => proxy.server.listen(0, "127.0.0.1", resolve));
    return proxy;
  }

  get address(): string {
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}/`;
  }

  async close(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise((resolve) => this.server.close(resolve));
  }

  private async handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await buffer(request);
    const deed = DEEDS[Math.floor(this.chance() * DEEDS.length)] ?? "pass";
    this.done[deed] += 1;
    if (deed === "cut-before") return void response.destroy();
    if (deed.startsWith("late")) await sleep(LATEST_ms * this.chance());
    // A part that breaks off: the server waits for the rest until the connection ends.
    if (deed === "cut-half") return void response.destroy(await this.half(request, body));
    const answers = [this.forward(request, body)];
    if (deed.endsWith("double")) answers.push(this.forward(request, body));
    const [answer] = await Promise.all(answers);
    if (answer === undefined || deed === "cut-after") return void response.destroy();
    response.writeHead(answer.status, { "content-type": "application/json" }).end(await answer.text());
  }

  private forward({ url = "/", method = "GET", headers }: IncomingMessage, body: Buffer): Promise<Response> {
    const sent = Object.entries(headers).filter(([name]) =>
      ["content-type", "content-encoding", "cookie"].includes(name),
    );
    return fetch(new URL(url, this.to), {
      method,
      headers: Object.fromEntries(sent.map(([name, value]) => [name, String(value)])),
      body: new Uint8Array(body),
    });
  }

  private async half({ url = "/", headers }: IncomingMessage, body: Buffer): Promise<undefined> {
    const cut = new AbortController();
    const stream = new ReadableStream({
      start(controller) {
        controller.enqueue(new Uint8Array(body.subarray(0, body.length / 2)));
        setTimeout(() => cut.abort(), 20);
      },
    });
    const init = { method: "POST", body: stream, duplex: "half", signal: cut.signal } as const;
    const kept = { "content-type": "application/json", "content-encoding": "gzip", cookie: headers.cookie ?? "" };
    await fetch(new URL(url, this.to), { ...init, headers: kept }).catch(() => undefined);
    return undefined;
  }
}
