import { once } from "node:events";
import { get, type IncomingMessage } from "node:http";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { handMotion } from "../../../src/progress/demo/handMotion";
import { toBase64 } from "../../../src/records/motion/base64";
import { encodeTrace } from "../../../src/records/motion/traceCodec";
import type { BenchTelling } from "../../../src/school/wire/liveWire";
import { seededChance } from "../../../src/statistics/chance";
import { testSchool, testServer } from "../../server/support/testSchool";
import { spawnServer } from "../../server/weather/spawnedServer";
import type { WeatherDatabase } from "../../server/weather/weatherEngines";
import { type Seat, seatBenches } from "./seats";
import { type TextSocket, textSocket } from "./textSocket";
import { sleep, tell } from "./told";

const BENCHES = 300;
/** Updates of each bench a second, and for how long, s: the server waits longer than that for an answer to its first ping. */
const PER_SECOND = 10;
const SECONDS = 20;

const profile = shippedProfile("three-wheel");
const combination = [29, 92, 54];

/** The motion of an attempt as it grows, packed, a tenth of a second further each time. */
function growingMotions(): readonly string[] {
  const start = { dial: 12, slack: [0, 0, 0] };
  const plan = { stopErrors: [0.2, -0.4, 0.1], speed: 21 };
  const { positions, times_ms } = handMotion(profile, combination, 12, plan, seededChance(3));
  const end = times_ms.at(-1) ?? 0;
  return Array.from({ length: Math.floor(end / 100) }, (_, k) => {
    const count = times_ms.filter((time) => time <= 100 * (k + 1)).length;
    const motion = { start, positions: positions.slice(0, count), times_ms: times_ms.slice(0, count) };
    return toBase64(encodeTrace(motion));
  });
}

/** What a bench at work tells as its update of some number: by turns what goes on there, and its attempt as it grows. */
function updateOf({ personId }: Seat, k: number, motions: readonly string[], unsent = 0): string {
  const startedAt = Date.UTC(2026, 2, 2, 9);
  const told: BenchTelling =
    k % 2 === 0
      ? {
          v: 1,
          kind: "state",
          state: {
            ...{ personId, profileId: profile.id, exercise: "open", isWaiting: false, unsent },
            leg: { at: 1 + (k % 3), of: 3 },
            last: { isRight: k % 4 !== 0, endedAt: startedAt },
          },
        }
      : {
          v: 1,
          kind: "attempt",
          attempt: {
            ...{ id: `growing-${personId}`, startedAt, profileId: profile.id, combination },
            motion: motions[k % motions.length] ?? "",
          },
        };
  return JSON.stringify(told);
}

/** What a bench tells last, so that one sees on the boards that all before it was taken. */
const LAST = 999_999;

/** Opens the board of a class, and counts the bytes that it hears and the benches that told their last. */
async function board(address: string, classId: string, cookie: string) {
  const asked = get(`${address}api/classes/${classId}/live`, { headers: { cookie }, agent: false });
  const [answer] = (await once(asked, "response")) as [IncomingMessage];
  const heard = { bytes: 0, events: 0, last: 0, end: () => answer.destroy() };
  // A mark may be cut in two by the end of a piece.
  let end = "";
  const count = (text: string, mark: string) => text.split(mark).length - 1;
  answer.on("data", (piece: Buffer) => {
    const text = piece.toString("latin1");
    heard.bytes += piece.length;
    heard.events += count(text, "\ndata: ");
    heard.last += count(end + text, `"unsent":${LAST}`);
    end = text.slice(-`"unsent":${LAST}`.length + 1);
  });
  answer.on("error", () => undefined);
  return heard;
}

/** Benches tell for some seconds. @returns how many updates were told */
async function tellAll(sockets: readonly TextSocket[], seats: readonly Seat[], motions: readonly string[]) {
  const step = 1000 / PER_SECOND;
  let told = 0;
  const begin = performance.now();
  await Promise.all(
    sockets.map(async (socket, bench) => {
      const phase = (step * bench) / sockets.length;
      for (let k = 0; k < PER_SECOND * SECONDS; k++) {
        await sleep(Math.max(0, begin + phase + k * step - performance.now()));
        const seat = seats[bench];
        if (seat !== undefined) socket.say(updateOf(seat, k + bench, motions));
        told += 1;
      }
    }),
  );
  return told;
}

/** 300 benches of some classes tell ten times a second how they are, with a board open on each class. @param perClass - benches of a class */
export async function liveLoad(name: string, weather: WeatherDatabase, perClass: number): Promise<void> {
  const first = await weather.open();
  const school = await testServer({ ...first, remove: first.close });
  school.pass(Date.now() - school.world.now());
  const head = await testSchool(school, `Millbrook ${perClass}`);
  const seats = await seatBenches(school, head.schoolId, BENCHES, perClass);
  await school.server.close();
  await first.close();
  const server = await spawnServer(weather.data, weather.address);
  const cookie = Object.entries(head.cookies).map(([key, value]) => `${key}=${value}`);
  const classes = [...new Set(seats.map(({ classId }) => classId))];
  const boards = await Promise.all(classes.map((classId) => board(server.address, classId, cookie.join("; "))));
  const sockets = await Promise.all(seats.map((seat) => textSocket(`${server.address}api/bench/live`, seat.cookie)));
  const motions = growingMotions();
  await sleep(1000);
  const before = await server.used();
  const begin = performance.now();
  const told = await tellAll(sockets, seats, motions);
  for (const [k, socket] of sockets.entries()) socket.say(updateOf(seats[k] as Seat, 0, motions, LAST));
  const sumOf = (field: "events" | "bytes" | "last") => boards.reduce((sum, one) => sum + one[field], 0);
  while (sumOf("last") < BENCHES && !sockets.some((socket) => socket.isClosed())) await sleep(20);
  const seconds = (performance.now() - begin) / 1000;
  const used = (await server.used()) - before;
  const closed = sockets.filter((socket) => socket.isClosed()).length;
  const [events, bytes] = [sumOf("events"), sumOf("bytes")];
  for (const one of [...sockets, ...boards]) one.end();
  await server.kill();
  const cores = used / 1000 / seconds;
  const heard = `boards heard ${events} times, ${(bytes / 1e6 / seconds).toFixed(1)} MB a second`;
  tell(
    `${name}, ${BENCHES} benches, ${classes.length} boards: ${(told / seconds).toFixed(0)} updates a second for ${seconds.toFixed(1)} s`,
  );
  tell(`  ${cores.toFixed(2)} cores (aim: below 1); ${heard}; ${closed} connections lost`);
  if (closed > 0) throw new Error("connections were lost");
}
