import { type BenchTelling, type BoardEvent, GONE_MS, type LiveBench } from "../wire/liveWire";

/** The benches of a class by their ids, as a board shows them. */
export type LiveBoard = ReadonlyMap<string, LiveBench>;

/** Whether a bench has gone for so long that nobody looks for it on a board. One with a hand up stays. */
export const isOffBoard = ({ isHere, hand, seenAt }: LiveBench, now: number): boolean =>
  !isHere && hand === null && now - seenAt > GONE_MS;

/** A board after what it heard: all benches anew, or those that changed; those that went long ago are left out. */
export function boardAfter(board: LiveBoard, { isAll, benches, now }: BoardEvent): LiveBoard {
  const after = new Map(isAll ? [] : board);
  for (const bench of benches) after.set(bench.deviceId, bench);
  return new Map([...after].filter(([, bench]) => !isOffBoard(bench, now)));
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
  if (told.kind === "state") {
    const { state } = told;
    const attempt = bench.attempt && { ...bench.attempt, hasEnded: bench.attempt.hasEnded || state.isWaiting };
    return { ...seen, state, attempt };
  }
  const { attempt } = told;
  return { ...seen, attempt: attempt && { id: attempt.id, letters: attempt.motion.length, hasEnded: false } };
}
