import type { BenchTelling, BoardEvent, LiveBench } from "../wire/liveWire";

/** The benches of a class by their ids, as a board shows them. */
export type LiveBoard = ReadonlyMap<string, LiveBench>;

/** A board after what it heard: all benches anew, or those that changed. */
export function boardAfter(board: LiveBoard, { isAll, benches }: BoardEvent): LiveBoard {
  const after = new Map(isAll ? [] : board);
  for (const bench of benches) after.set(bench.deviceId, bench);
  return after;
}

/** A bench that has told nothing yet. */
export const silentBench = (deviceId: string, now: number): LiveBench => ({
  deviceId,
  isHere: false,
  seenAt: now,
  state: null,
  hand: null,
  attempt: null,
});

/** A bench after what it told. Its hand stays: whoever keeps hands says when it is up. An attempt ends when nobody works on. */
export function benchAfter(bench: LiveBench, told: BenchTelling, now: number): LiveBench {
  const seen = { ...bench, isHere: true, seenAt: now };
  if (told.kind === "hand") return seen;
  if (told.kind === "state")
    return { ...seen, state: told.state, attempt: told.state.isWaiting ? null : bench.attempt };
  return { ...seen, attempt: { id: told.attempt.id, letters: told.attempt.motion.length } };
}
