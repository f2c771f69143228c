import type * as z from "zod/mini";
import type { LiveBoard } from "../../../school/live/liveBoard";
import { silentBench } from "../../../school/live/liveBoard";
import type { deviceList } from "../../../school/wire/classWire";
import { GONE_MS, type LiveBench } from "../../../school/wire/liveWire";

/** A bench that joined the class. */
export type Device = Readonly<z.infer<typeof deviceList>["devices"][number]>;

/** How it stands with a bench now. */
export type Standing = "help" | "waiting" | "working" | "silent" | "gone";

/** A bench as a row of the board. */
export interface BoardRow {
  readonly bench: LiveBench;
  readonly standing: Standing;
  /** What its people call the bench, and who works there; null where that is not known. */
  readonly benchName: string | null;
  readonly person: string | null;
}

/** A bench at work that has told nothing for so long has its page hidden, or nobody's hand on it, ms. */
const SILENT_MS = 120_000;
/** Whoever waits for so long comes before those at work, ms: between two attempts nobody waits. */
const LONG_WAIT_MS = 30_000;

function standingOf({ isHere, hand, state, seenAt }: LiveBench, now: number): Standing {
  if (hand !== null) return "help";
  if (!isHere) return "gone";
  if (state?.isWaiting === true) return "waiting";
  return state === null || now - seenAt > SILENT_MS ? "silent" : "working";
}

/** Place of a row among all: those who need help first, whoever has waited longest before others; then those who wait long. */
function placeOf({ standing, bench }: BoardRow, now: number): readonly [number, number] {
  if (bench.hand !== null) return [0, bench.hand.raisedAt];
  return standing === "waiting" && now - bench.seenAt > LONG_WAIT_MS ? [1, bench.seenAt] : [2, 0];
}

/** What a row is found by. */
const nameOf = ({ person, benchName, bench }: BoardRow) => person ?? benchName ?? bench.deviceId;

/**
 * The rows of a board: every bench that told something, and those that were here a short while ago and told nothing.
 *
 * @param now - by the server's clock, milliseconds since 1970
 */
export function boardRows(board: LiveBoard, devices: readonly Device[], now: number): readonly BoardRow[] {
  const known = new Map(devices.map((device) => [device.id, device]));
  const untold = devices
    .filter(({ id, signedOutAt, seenAt }) => signedOutAt === null && !board.has(id) && now - seenAt < GONE_MS)
    .map(({ id, seenAt }) => silentBench(id, seenAt));
  const rows = [...board.values(), ...untold].map((bench): BoardRow => {
    const device = known.get(bench.deviceId);
    const personId = bench.hand?.personId ?? bench.state?.personId;
    const people = device?.people ?? [];
    const person = people.find(({ id }) => id === personId) ?? (people.length === 1 ? people[0] : undefined);
    return {
      bench,
      standing: standingOf(bench, now),
      benchName: device?.name ?? null,
      person: person?.name ?? null,
    };
  });
  return rows.toSorted((one, other) => {
    const [place, time] = placeOf(one, now);
    const [otherPlace, otherTime] = placeOf(other, now);
    return place - otherPlace || time - otherTime || nameOf(one).localeCompare(nameOf(other));
  });
}

/** Whether the list of benches is older than what the board tells: somebody has joined since. */
export function isUnknown(board: LiveBoard, devices: readonly Device[]): boolean {
  const known = new Map(devices.map(({ id, people }) => [id, people]));
  return [...board.values()].some(({ deviceId, state }) => {
    const people = known.get(deviceId);
    return people === undefined || (state !== null && people.every(({ id }) => id !== state.personId));
  });
}
