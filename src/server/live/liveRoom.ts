import { isOffBoard, silentBench } from "../../school/live/liveBoard";
import type { LiveBench } from "../../school/wire/liveWire";

interface Seen {
  readonly bench: LiveBench;
  /** Which change of the room it was. */
  readonly change: number;
  /** The server that it is connected to, or was. */
  readonly serverId: string;
}

/** The benches of one class as one server knows them. Each change has a number, so that a board can ask what came since. */
export class LiveRoom {
  private readonly seen = new Map<string, Seen>();
  /** Number of the last change. */
  change = 0;

  /** What is known of a bench. */
  bench(deviceId: string, now: number): LiveBench {
    return this.seen.get(deviceId)?.bench ?? silentBench(deviceId, now);
  }

  /** Takes what a bench is by now, told by the server that it is connected to. */
  set(bench: LiveBench, serverId: string): void {
    this.change += 1;
    this.seen.set(bench.deviceId, { bench, change: this.change, serverId });
  }

  /** The server that a bench is connected to, or was; undefined where it was never seen. */
  serverOf(deviceId: string): string | undefined {
    return this.seen.get(deviceId)?.serverId;
  }

  /** Whether a bench is connected to a server, as far as is known. */
  isAt(deviceId: string, serverId: string): boolean {
    const seen = this.seen.get(deviceId);
    return seen?.serverId === serverId && seen.bench.isHere;
  }

  /** Takes what another server told: that a bench has left it is no news where the bench has come elsewhere since. */
  hear(bench: LiveBench, serverId: string): void {
    const known = this.seen.get(bench.deviceId);
    const hasMoved = known?.bench.isHere === true && known.serverId !== serverId;
    if (bench.isHere || !hasMoved) this.set(bench, serverId);
  }

  /** Marks every bench of a server as gone: that server has not been heard for long. */
  lose(isLost: (serverId: string) => boolean): void {
    for (const { bench, serverId } of [...this.seen.values()]) {
      if (bench.isHere && isLost(serverId)) this.set({ ...bench, isHere: false }, serverId);
    }
  }

  /** Forgets benches that went long ago: boards leave them out by themselves. */
  forget(now: number): void {
    for (const { bench } of [...this.seen.values()]) if (isOffBoard(bench, now)) this.seen.delete(bench.deviceId);
  }

  /** What changed after a change. @param from - 0 for all */
  since(from: number): readonly LiveBench[] {
    return [...this.seen.values()].flatMap(({ bench, change }) => (change > from ? [bench] : []));
  }

  /** What changed after a change at one server's own benches. */
  ownSince(from: number, ownId: string): readonly LiveBench[] {
    return [...this.seen.values()].flatMap(({ bench, change, serverId }) =>
      change > from && serverId === ownId ? [bench] : [],
    );
  }
}
