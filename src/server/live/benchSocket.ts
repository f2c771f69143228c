import type { WebSocket } from "@fastify/websocket";
import type { FastifyRequest } from "fastify";
import { fieldProblem } from "../../lock/fieldProblem";
import { schoolProblem } from "../../school/schoolWords";
import { type BenchHears, type BenchTelling, benchTelling, SIGN_MS } from "../../school/wire/liveWire";
import type { Problem } from "../../wording/problem";
import { type AskingBench, whoAsks } from "../http/whoAsks";
import type { World } from "../world/world";
import { handAt, lowerHand, raiseHand } from "./hands";
import type { LiveHub } from "./liveHub";
import { TellingRate } from "./tellingRate";

/** Why a connection is ended: it broke a rule (RFC 6455), or it is not a bench's any more or has another one. */
const CLOSED = { tooMany: 1008, notABench: 4001, replaced: 4000 } as const;

type Told = { readonly told: BenchTelling } | { readonly problem: Problem };

function read(text: string): Told {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { problem: { code: "invalid", path: [], values: {} } };
  }
  const { success, data, error } = benchTelling.safeParse(value);
  return success ? { told: data } : { problem: fieldProblem(error.issues, value) };
}

/** Whom a bench speaks for; null where that does not matter. Any hand at it may go down. */
function whoOf(told: BenchTelling): string | null {
  if (told.kind === "state") return told.state.personId;
  return told.kind === "hand" && told.isRaised ? told.personId : null;
}

/** The connection of one bench, from its first message to its end. */
export class BenchSocket {
  private readonly socket: WebSocket;
  private readonly request: FastifyRequest;
  private readonly bench: AskingBench;
  private readonly hub: LiveHub;
  private readonly world: World;
  private readonly people = new Set<string>();

  constructor(socket: WebSocket, request: FastifyRequest, bench: AskingBench, hub: LiveHub, world: World) {
    this.socket = socket;
    this.request = request;
    this.bench = bench;
    this.hub = hub;
    this.world = world;
  }

  /** Serves the bench until it goes. What it sends while its hand is looked up waits in its turn. */
  serve(): void {
    const { socket, bench, hub, world } = this;
    const rate = new TellingRate(world.now());
    let before: Promise<unknown> = Promise.resolve();
    const inTurn = (step: () => unknown) => {
      before = before.then(step).catch((error) => {
        this.request.log.error({ err: error }, "a message of a bench failed");
        this.refuse(schoolProblem("try-again", []));
      });
    };
    let connected: ReturnType<LiveHub["enter"]> | null = null;
    inTurn(async () => {
      const hand = await handAt(bench, world);
      if (socket.readyState !== socket.OPEN) return;
      connected = hub.enter(bench, hand, {
        onLowered: () => this.say({ v: 1, kind: "hand", isRaised: false }),
        onReplaced: () => socket.close(CLOSED.replaced),
      });
      this.say({ v: 1, kind: "hand", isRaised: hand !== null });
    });
    socket.on("message", (data, isBinary) => {
      const next = rate.next(world.now());
      if (next === "too-many" || isBinary) socket.close(CLOSED.tooMany);
      if (next !== "taken" || isBinary) return;
      inTurn(() => connected !== null && this.take(String(data), connected));
    });
    const ping = this.pings();
    socket.on("error", () => socket.terminate());
    socket.on("close", () => {
      clearInterval(ping);
      inTurn(() => connected !== null && hub.leave(bench, connected));
    });
  }

  private async take(text: string, connected: ReturnType<LiveHub["enter"]>): Promise<void> {
    const sent = read(text);
    const problem = "problem" in sent ? sent.problem : await this.problemOf(sent.told);
    if (problem !== null) return this.refuse(problem);
    if (!("told" in sent)) return;
    if (sent.told.kind === "hand") await this.hand(sent.told);
    this.hub.tell(this.bench, connected, sent.told);
  }

  private async hand({ isRaised, personId }: BenchTelling & { readonly kind: "hand" }): Promise<void> {
    const { bench, hub, world } = this;
    if (isRaised) {
      hub.setHand(bench, await raiseHand(bench, personId, world));
      this.say({ v: 1, kind: "hand", isRaised: true });
    } else {
      await lowerHand(bench, world);
      hub.setHand(bench, null);
    }
  }

  /** A bench speaks for those who joined there, and for nobody else. */
  private async problemOf(told: BenchTelling): Promise<Problem | null> {
    const who = whoOf(told);
    // A hand is stored: whoever raises it is looked up each time, for they may have left, or been erased.
    if (who === null || (told.kind === "state" && this.people.has(who))) return null;
    const { bench, world } = this;
    const rows = await world.database
      .selectFrom("device_people")
      .select("person_id")
      .where("school_id", "=", bench.schoolId)
      .where("device_id", "=", bench.deviceId)
      .where("left_at", "is", null)
      .execute();
    this.people.clear();
    for (const { person_id } of rows) this.people.add(person_id);
    return this.people.has(who) ? null : schoolProblem("not-joined-here", ["personId"]);
  }

  /** Finds out whether the other end is there and still a bench of its class, and tells it that this one is: a page sees no ping. */
  private pings(): NodeJS.Timeout {
    const { socket, request, bench, world } = this;
    let hasAnswered = true;
    socket.on("pong", () => {
      hasAnswered = true;
    });
    return setInterval(async () => {
      if (!hasAnswered) return socket.terminate();
      hasAnswered = false;
      socket.ping();
      this.say({ v: 1, kind: "here" });
      this.people.clear();
      // A database that is away for a while ends no connection.
      const who = await whoAsks(request, "bench", world).catch(() => null);
      if (who?.role === "anyone") socket.close(CLOSED.notABench);
      // It has joined another class since: it connects anew, and is on the board of that one.
      if (who?.role === "bench" && who.classId !== bench.classId) socket.terminate();
    }, SIGN_MS).unref();
  }

  private refuse({ path, ...problem }: Problem): void {
    const keys = path.map((key) => (typeof key === "symbol" ? String(key) : key));
    this.say({ v: 1, kind: "refused", problem: { ...problem, path: keys } });
  }

  private say(message: BenchHears): void {
    if (this.socket.readyState === this.socket.OPEN) this.socket.send(JSON.stringify(message));
  }
}
