import { benchAfter } from "../../school/live/liveBoard";
import { type BenchTelling, BOARD_PAUSE_MS, type GrowingAttempt, type LiveBench } from "../../school/wire/liveWire";
import { newServerId } from "../security/secrets";
import type { World } from "../world/world";
import { type Hand, handsOf, type Place } from "./hands";
import type { BenchCalls, Board, Connected, Room } from "./hubParts";
import { LiveRoom } from "./liveRoom";
import { benchMessages, readTold, type ServersTell } from "./serversTell";

/** From one sign of life of a server to its next, and silence after which its benches count as gone, ms. */
export const SERVER_PULSE_MS = 15_000;
const SERVER_LOST_MS = 3 * SERVER_PULSE_MS;

const placeKey = (...parts: readonly string[]) => parts.join(" ");

/** What goes on at the benches of every class now, as one server knows it from its own benches and from other servers. */
export class LiveHub {
  /** What boards know this server's numbers of changes by. */
  readonly id: string;
  private readonly rooms = new Map<string, Room>();
  private readonly connected = new Map<string, Connected>();
  private readonly heardAt = new Map<string, number>();
  private readonly world: World;
  private readonly endHearing: () => Promise<void>;
  private flushing: NodeJS.Timeout | undefined;
  private readonly pulse: NodeJS.Timeout;
  private wanted: (place: Place) => void = () => undefined;

  constructor(world: World) {
    this.world = world;
    this.id = newServerId(world);
    this.endHearing = world.channel.hear(
      (text) => this.hear(text),
      () => void this.catchUp(),
    );
    this.pulse = setInterval(() => this.beat(), SERVER_PULSE_MS);
    this.pulse.unref();
  }

  /** Calls back where another server wants the attempt of a bench that is connected here. */
  onWanted(callback: (place: Place) => void): void {
    this.wanted = callback;
  }

  /** A bench has connected; it takes the place of a connection that it had. */
  enter(place: Place, hand: Hand | null, on: BenchCalls): Connected {
    const connected: Connected = { on, attempt: null };
    const key = placeKey(place.schoolId, place.deviceId);
    this.connected.get(key)?.on.onReplaced();
    this.connected.set(key, connected);
    const now = this.world.now();
    const known = this.room(place).room.bench(place.deviceId, now);
    this.set(place, { ...known, isHere: true, seenAt: now, hand, attempt: null });
    return connected;
  }

  /** A connection of a bench has ended. */
  leave(place: Place, connected: Connected): void {
    const key = placeKey(place.schoolId, place.deviceId);
    if (this.connected.get(key) !== connected) return;
    this.connected.delete(key);
    const { room } = this.room(place);
    if (!room.isAt(place.deviceId, this.id)) return;
    this.set(place, { ...room.bench(place.deviceId, this.world.now()), isHere: false, attempt: null });
  }

  /** A bench tells something. */
  tell(place: Place, connected: Connected, told: BenchTelling): void {
    const now = this.world.now();
    const after = benchAfter(this.room(place).room.bench(place.deviceId, now), told, now);
    if (told.kind === "attempt") connected.attempt = told.attempt;
    this.set(place, after);
  }

  /** A hand was raised or lowered, here or, where an instructor lowered it, at any server. */
  setHand(place: Place, hand: Hand | null): void {
    if (hand === null) this.tellServers({ from: this.id, kind: "lowered", ...place });
    this.showHand(place, hand);
  }

  /** The attempt that grows or has just ended at a bench which is connected here; undefined where the bench is not. */
  attemptAt({ schoolId, deviceId }: Place): GrowingAttempt | null | undefined {
    return this.connected.get(placeKey(schoolId, deviceId))?.attempt;
  }

  /** Whether a bench of a class has an attempt to show, at whichever server. */
  hasAttempt(place: Place): boolean {
    return this.room(place).room.bench(place.deviceId, 0).attempt !== null;
  }

  /** Asks the other servers for the attempt of a bench. */
  want(place: Place): void {
    this.tellServers({ from: this.id, kind: "wanted", ...place });
  }

  /**
   * A board begins to listen, and hears at once what it does not know.
   *
   * @param since - the change that it heard of last from this server; null for all
   * @returns ends it
   */
  async listen(of: Omit<Place, "deviceId">, since: number | null, board: Board): Promise<() => void> {
    const hands = await handsOf(of, this.world);
    const entry = this.room(of);
    const { room, boards } = entry;
    const now = this.world.now();
    // A hand outlives the servers that it was raised at.
    for (const [deviceId, hand] of hands) {
      const bench = room.bench(deviceId, now);
      if (bench.hand === null) room.set({ ...bench, hand }, room.serverOf(deviceId) ?? this.id);
    }
    const isAll = since === null || since > room.change;
    boards.set(board, room.change);
    board({ v: 1, isAll, now, benches: [...room.since(isAll ? 0 : since)] }, room.change);
    return () => boards.delete(board);
  }

  /** Tells boards and servers what has changed since they were told last. */
  flush(): void {
    clearTimeout(this.flushing);
    this.flushing = undefined;
    for (const { schoolId, classId, room, boards, told } of this.rooms.values()) {
      const changed = new Map<number, readonly LiveBench[]>();
      for (const [board, since] of boards) {
        if (since === room.change) continue;
        const benches = changed.get(since) ?? room.since(since);
        changed.set(since, benches);
        boards.set(board, room.change);
        board({ v: 1, isAll: false, now: this.world.now(), benches: [...benches] }, room.change);
      }
      if (told === room.change) continue;
      this.room({ schoolId, classId }).told = room.change;
      this.tellBenches({ schoolId, classId }, room.ownSince(told, this.id));
    }
  }

  /** Ends hearing and telling. */
  async end(): Promise<void> {
    clearInterval(this.pulse);
    this.flush();
    clearTimeout(this.flushing);
    await this.endHearing();
  }

  private set(place: Place, bench: LiveBench): void {
    this.room(place).room.set(bench, this.id);
    this.soon();
  }

  /** A hand belongs to its bench, whichever server that is connected to. */
  private showHand(place: Place, hand: Hand | null): void {
    const { room } = this.room(place);
    if (hand === null) this.connected.get(placeKey(place.schoolId, place.deviceId))?.on.onLowered();
    room.set({ ...room.bench(place.deviceId, this.world.now()), hand }, room.serverOf(place.deviceId) ?? this.id);
    this.soon();
  }

  private soon(): void {
    this.flushing ??= setTimeout(() => this.flush(), BOARD_PAUSE_MS);
  }

  private room({ schoolId, classId }: Omit<Place, "deviceId">): Room {
    const key = placeKey(schoolId, classId);
    const known = this.rooms.get(key);
    if (known !== undefined) return known;
    const made = { schoolId, classId, room: new LiveRoom(), boards: new Map(), told: 0 };
    this.rooms.set(key, made);
    return made;
  }

  private tellServers(told: ServersTell): void {
    // What is lost is told again with the next change; nothing is kept in this way alone.
    this.world.channel.tell(JSON.stringify(told)).catch(() => undefined);
  }

  private tellBenches(of: Omit<Place, "deviceId">, benches: readonly LiveBench[]): void {
    for (const text of benchMessages(this.id, of, benches)) this.world.channel.tell(text).catch(() => undefined);
  }

  private beat(): void {
    this.tellServers({ from: this.id, kind: "here", isNew: false });
    const now = this.world.now();
    const isLost = (id: string) => id !== this.id && now - (this.heardAt.get(id) ?? 0) > SERVER_LOST_MS;
    for (const { room } of this.rooms.values()) {
      room.lose(isLost);
      room.forget(now);
    }
    this.soon();
  }

  private hear(text: string): void {
    const told = readTold(text);
    if (told === null || told.from === this.id) return;
    this.heardAt.set(told.from, this.world.now());
    if (told.kind === "here") this.greet(told.isNew);
    else if (told.kind === "benches") this.hearBenches(told);
    else if (told.kind === "lowered") this.showHand(told, null);
    else if (this.connected.has(placeKey(told.schoolId, told.deviceId))) this.wanted(told);
  }

  /**
   * Hearing has begun, perhaps after it was cut off: asks the others how their benches are, tells how those here are, since the
   * others may have been cut off too, and looks whose hands are still up.
   */
  private async catchUp(): Promise<void> {
    this.tellServers({ from: this.id, kind: "here", isNew: true });
    this.tellOwn();
    for (const { schoolId, classId, room } of this.rooms.values()) {
      const hands = await handsOf({ schoolId, classId }, this.world).catch(() => null);
      if (hands === null) continue;
      for (const { deviceId, hand } of room.since(0)) {
        const place = { schoolId, classId, deviceId };
        const isLowered = hand !== null && !hands.has(deviceId);
        if (isLowered && this.connected.has(placeKey(schoolId, deviceId))) this.showHand(place, null);
      }
    }
  }

  /** Tells a server that has just come how the benches here are. */
  private greet(isNew: boolean): void {
    if (isNew) this.tellOwn();
  }

  private tellOwn(): void {
    for (const one of this.rooms.values()) this.tellBenches(one, one.room.ownSince(0, this.id));
  }

  private hearBenches(told: ServersTell & { readonly kind: "benches" }): void {
    for (const bench of told.benches) this.room(told).room.hear(bench, told.from);
    this.soon();
  }
}
