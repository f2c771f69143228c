import type { BenchHears, BenchTelling } from "../../../school/wire/liveWire";
import type { JoiningRow } from "../../../store/marks/outboxMarks";
import { Store } from "../../parts/page/store";
import { AttemptTeller } from "./attemptTeller";
import { type HandState, refusedHand, storedHand, storeHand, toldHand, wanting } from "./hand";
import { type LinkWorld, LiveLink } from "./liveLink";
import type { WorkHere } from "./workHere";

type State = Extract<BenchTelling, { kind: "state" }>["state"];

/** How often the work is looked at, ms. */
const LOOK_MS = 100;

/** What a live bench has of the outer world. */
export interface LiveWorld extends LinkWorld {
  /** Whoever practices, as the class knows the person; null for nobody of the class. */
  readonly joining: () => Pick<JoiningRow, "id"> | null;
  readonly work: () => WorkHere;
  /** What the last attempt or job of somebody came to. */
  readonly last: (personId: string) => Promise<State["last"]>;
  /** Records that wait to be sent. */
  readonly unsent: () => number;
  readonly isHidden: () => boolean;
  readonly newId: () => string;
  /** Milliseconds since 1970. */
  readonly wall: () => number;
}

/**
 * Tells the class how it goes at this bench, as long as it is connected and its page is seen. Practice never waits for it, and
 * what it tells is kept nowhere. A store: it changes with its hand and its connection.
 */
export class LiveBench extends Store {
  hand: HandState = storedHand();
  private readonly world: LiveWorld;
  private readonly link: LiveLink;
  private readonly attempts: AttemptTeller;
  private stated = "";
  private last: State["last"];
  private personId: string | null = null;
  private callOff: (() => void) | null = null;

  constructor(world: LiveWorld) {
    super();
    this.world = world;
    this.attempts = new AttemptTeller(world.newId);
    this.link = new LiveLink(world, {
      onHeard: (heard) => this.hear(heard),
      onLive: (isLive) => this.live(isLive),
    });
  }

  /** Whether the class hears this bench. */
  get isLive(): boolean {
    return this.link.isLive;
  }

  /** Something may have changed that it goes by: whether somebody of the class practices. */
  wake(): void {
    const id = this.world.joining()?.id ?? null;
    const isOther = id !== this.personId;
    this.personId = id;
    if (isOther) this.last = undefined;
    if (id === null) this.link.end();
    else if (isOther) this.nudge();
    else if (this.callOff === null) this.look();
  }

  /** The page is seen again, the network is back, or another person practices: connects at once. */
  nudge(): void {
    if (this.world.joining() === null || this.world.isHidden()) return;
    this.link.connectNow();
    this.look();
  }

  /** Ends the connection: the page goes. */
  end(): void {
    this.link.end();
  }

  /** A record was stored: the last result may be another one. */
  async lookAtLast(): Promise<void> {
    const personId = this.world.joining()?.id;
    if (personId !== undefined) this.last = await this.world.last(personId).catch(() => this.last);
  }

  /** The person raises or lowers the hand. */
  wantHand(wanted: "up" | "down"): void {
    this.setHand(wanting(this.hand, wanted));
    this.tellHand();
    this.nudge();
  }

  private live(isLive: boolean): void {
    this.stated = "";
    this.attempts.forget();
    this.changed();
    if (isLive) void this.lookAtLast();
    if (isLive) this.look();
  }

  private hear(heard: BenchHears): void {
    if (heard.kind === "here") return;
    this.setHand(heard.kind === "hand" ? toldHand(this.hand, heard.isRaised) : refusedHand(this.hand));
    if (heard.kind === "hand") this.tellHand();
  }

  private setHand(hand: HandState): void {
    this.hand = hand;
    storeHand(hand);
    this.changed();
  }

  private tellHand(): void {
    const personId = this.world.joining()?.id;
    const { wanted } = this.hand;
    if (wanted === null || personId === undefined) return;
    this.link.tell({ v: 1, kind: "hand", personId, isRaised: wanted === "up" });
  }

  /** Looks at the work, tells what is new of it, and looks again soon; a page that is not seen tells nothing. */
  private look(): void {
    const { world, link } = this;
    this.callOff?.();
    this.callOff = null;
    const person = world.joining();
    if (person === null || world.isHidden()) return;
    this.callOff = world.later(() => this.look(), LOOK_MS);
    link.look();
    if (link.isLive) this.tellWork(person.id);
  }

  private tellWork(personId: string): void {
    const { world, link } = this;
    const { state, dialed } = world.work();
    const attempt = this.attempts.next(dialed, world.wall(), world.now());
    if (attempt !== undefined) link.tell({ v: 1, kind: "attempt", attempt });
    const { last } = this;
    const told: State = { personId, ...state, ...(last && { last }), unsent: world.unsent() };
    const text = JSON.stringify(told);
    if (text !== this.stated && link.tell({ v: 1, kind: "state", state: told })) this.stated = text;
  }
}
