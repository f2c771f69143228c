import * as z from "zod/mini";
import type { PersonRecord } from "../../records/records";
import { type BenchNews, benchNews } from "../../school/people/benchNews";
import { joined } from "../../school/wire/peopleWire";
import { recordsReceipt } from "../../school/wire/recordsWire";
import type { JoiningRow } from "../../store/marks/outboxMarks";
import { mergePeople } from "../../store/moveRecords";
import { changeJoinings, joinedHere, joinHere, leaveHere } from "../../store/outbox/joinings";
import { sendAllAgain } from "../../store/outbox/outbox";
import { type CurrentLogbook, currentLogbook } from "../keeping/currentLogbook";
import { Store } from "../parts/page/store";
import { pageStore } from "../parts/storage/pageStore";
import { type Answer, askServer, jsonBody, problemWords } from "./askServer";
import type { LiveBench } from "./live/liveBench";
import { packedBody } from "./packedBody";
import { inOneTab } from "./page/oneTab";
import { Sender } from "./sender";
import { POST_CHANGES } from "./sentChanges";

/** Another tab looks at the outbox anew when it hears this. */
const CHANNEL = "gatefall-outbox";
/** After a record is stored, before it is sent, ms: what is stored with it goes along. */
const SOON_MS = 400;

/** Whatever it is, it is not looked at. */
const anything = z.unknown();

type Joined = z.output<typeof joined>;

const SILENT = "The class server does not answer. Check the network of this bench, then try again.";

/** What was answered. @throws {Error} with a sentence where it is a refusal, or nobody answered */
function answered<Value>(answer: Answer<Value>): Value {
  if (answer.kind === "answered") return answer.value;
  throw new Error(answer.kind === "silent" ? SILENT : `Not done: ${problemWords(answer.problem)}.`);
}

/** How a person joins: by the code of a class and a name, or by a card, scanned or typed. */
export type Joining =
  | { readonly kind: "code"; readonly code: string; readonly name: string; readonly pin: string }
  | { readonly kind: "card-code"; readonly code: string; readonly pin: string }
  | { readonly kind: "card"; readonly token: string; readonly pin: string };

/** Where a way to join is asked for, and what is said there but for bench and PIN. */
function askedOf(asked: Joining): readonly [path: string, says: object] {
  switch (asked.kind) {
    case "code":
      return ["/join", { code: asked.code, name: asked.name }];
    case "card-code":
      return ["/join/card-code", { code: asked.code }];
    case "card":
      return ["/join/card", { token: asked.token }];
  }
}

/** This bench as a bench of a class. A store: it changes with who joined, who practices and what is sent. */
export class SchoolBench extends Store {
  readonly current: CurrentLogbook;
  readonly sender: Sender;
  /** Whoever of this bench joined a class, by name. */
  joinings: readonly JoiningRow[] = [];
  /** What has changed at the class since this bench last asked, and nobody has read yet. */
  news: readonly BenchNews[] = [];
  /** What tells the class how it goes here; null until it is fetched, where somebody of a class practices here. */
  live: LiveBench | null = null;
  private isLiveAsked = false;
  private readonly channel = globalThis.BroadcastChannel === undefined ? null : new BroadcastChannel(CHANNEL);
  private soon: ReturnType<typeof setTimeout> | undefined;

  constructor(current: CurrentLogbook) {
    super();
    this.current = current;
    const store = pageStore();
    this.sender = new Sender({
      logbook: current.logbook,
      post: async (sentAt, records) =>
        askServer("/bench/records", recordsReceipt, await packedBody({ sentAt, records })),
      postChanges: POST_CHANGES,
      oneTab: (act) => inOneTab(act, { locks: navigator.locks, store, now: Date.now }),
      now: Date.now,
      chance: Math.random,
      later: (act, wait_ms) => {
        const timer = setTimeout(act, wait_ms);
        return () => clearTimeout(timer);
      },
    });
  }

  /** Whoever practices now, as the class knows the person; null where that is nobody of a class. */
  get joining(): JoiningRow | null {
    return this.joinings.find(({ id }) => id === this.current.person?.id) ?? null;
  }

  /** Looks who joined, and sends what waits: now, after each record, and when network or page come back. */
  async start(): Promise<void> {
    this.sender.subscribe(() => this.changed());
    this.current.subscribe(() => this.lookSoon());
    this.channel?.addEventListener("message", () => this.lookSoon());
    addEventListener("online", () => void this.sender.send());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") void this.sender.send();
    });
    await this.settle();
    if (this.joinings.length === 0) return;
    await this.askWho();
    await this.sender.send();
  }

  /** What was told is read. */
  readNews(): void {
    this.news = [];
    this.changed();
  }

  /** Asks the server who is at this bench, and takes down what has changed. Never throws. */
  private async askWho(): Promise<void> {
    const answer = await askServer("/bench", joined);
    if (answer.kind === "silent") return;
    const isNobody = answer.kind === "refused" && answer.problem.code === "nobody-joined";
    if (answer.kind === "refused" && answer.problem.code === "not-signed-in") this.news = [{ kind: "signed-out" }];
    else if (answer.kind === "answered" || isNobody) {
      const { news, changed } = benchNews(this.joinings, answer.kind === "answered" ? answer.value : null);
      const renamed = await changeJoinings(this.current.logbook, changed).catch(() => []);
      const own = renamed.find(({ id }) => id === this.current.person?.id);
      if (own !== undefined) this.current.choose(own);
      this.news = news;
      await this.settle();
    }
    this.changed();
  }

  /** Joins a class. @returns who joined @throws {Error} with a sentence where that is refused or nobody answers */
  async join(asked: Joining, bench: string): Promise<JoiningRow> {
    const pin = asked.pin === "" ? {} : { pin: asked.pin };
    const [path, says] = askedOf(asked);
    return this.takeIn(answered<Joined>(await askServer(path, joined, jsonBody({ ...says, bench, ...pin }))));
  }

  /** Local people whose records can be made those of somebody of the class: nobody invented, nobody of a class. */
  async localPeople(): Promise<readonly PersonRecord[]> {
    const ids = new Set(this.joinings.map(({ id }) => id));
    return (await this.current.people()).filter(({ id, isDemo }) => isDemo !== true && !ids.has(id));
  }

  /** Makes a local person one with somebody of the class. @throws {LogbookError} when the storage fails */
  async merge(from: string, to: string): Promise<void> {
    const person = (await this.current.people()).find(({ id }) => id === to) ?? null;
    await mergePeople(this.current.logbook, from, to);
    this.current.choose(person);
    await this.sender.send();
  }

  /** Has another person of the class practice here. */
  async practiceAs(id: string): Promise<void> {
    const person = (await this.current.people()).find((one) => one.id === id);
    if (person !== undefined) this.current.choose(person);
    this.changed();
  }

  /** Has a person leave this bench. @throws {Error} with a sentence where nobody answers */
  async leave(id: string): Promise<void> {
    await this.sender.send();
    const answer = await askServer("/bench/leave", anything, jsonBody({ personId: id }));
    // A bench that the server does not know any more has left already.
    if (answer.kind !== "refused") answered(answer);
    await leaveHere(this.current.logbook, id);
    await this.settle();
    const [other] = this.joinings;
    if (other !== undefined) await this.practiceAs(other.id);
    this.tellOthers();
  }

  /** Has everything that waits or was refused be sent now. */
  async sendAgain(): Promise<void> {
    await sendAllAgain(this.current.logbook);
    await this.sender.send();
  }

  private async takeIn({ school, class: of, person, deviceId }: Joined): Promise<JoiningRow> {
    const joining = { ...person, school, class: of, deviceId, joinedAt: Date.now() };
    this.current.choose(await joinHere(this.current.logbook, joining));
    await this.settle();
    this.tellOthers();
    void this.sender.send();
    return joining;
  }

  private async settle(): Promise<void> {
    this.joinings = await joinedHere(this.current.logbook).catch(() => this.joinings);
    this.changed();
    if (this.joinings.length > 0) void this.goLive();
  }

  /** Practice goes on without it: where its files cannot be had, the next change asks for them again. */
  private async goLive(): Promise<void> {
    if (this.isLiveAsked) return;
    this.isLiveAsked = true;
    try {
      this.live = (await import("./ownLiveBench")).ownLiveBench(this);
      this.live.subscribe(() => this.changed());
    } catch {
      this.isLiveAsked = false;
    }
    this.changed();
  }

  private lookSoon(): void {
    clearTimeout(this.soon);
    this.soon = setTimeout(() => void this.settle().then(() => this.sender.look()), SOON_MS);
  }

  private tellOthers(): void {
    this.channel?.postMessage("changed");
  }
}

let bench: Promise<SchoolBench> | null = null;

/** This bench as a bench of a class, begun once. */
export function schoolBench(): Promise<SchoolBench> {
  bench ??= (async () => {
    const made = new SchoolBench(await currentLogbook());
    void made.start();
    return made;
  })();
  return bench;
}
