import { beforeEach, expect, test, vi } from "vitest";
import { type BoardSource, BoardStream } from "../../../../src/app/classroom/board/boardStream";
import { silentBench } from "../../../../src/school/live/liveBoard";
import { type BoardEvent, SILENCE_MS } from "../../../../src/school/wire/liveWire";
import { NOON } from "../../../support/logbookRecords";

const [CONNECTING, CLOSED] = [0, 2];
/** The server's clock is so far ahead, ms. */
const AHEAD = 3_600_000;

/** A stream of a server, by hand. */
class FakeSource implements BoardSource {
  readyState = 1;
  onmessage: BoardSource["onmessage"] = null;
  onerror: BoardSource["onerror"] = null;
  isClosed = false;
  private here = () => undefined as unknown;

  close(): void {
    this.isClosed = true;
  }
  addEventListener(_name: string, act: unknown): void {
    this.here = act as () => unknown;
  }
  says(event: Partial<BoardEvent>): void {
    const told = { v: 1, isAll: false, now: NOON + Date.now() + AHEAD, benches: [], ...event };
    this.onmessage?.call(this as never, { data: JSON.stringify(told) } as MessageEvent);
  }
  beats(): void {
    this.here();
  }
  fails(readyState: number): void {
    this.readyState = readyState;
    this.onerror?.call(this as never, {} as Event);
  }
}

let sources: FakeSource[];
let refused: number;
let stream: BoardStream;
const source = () => sources.at(-1) as FakeSource;
const pass = (ms: number) => vi.advanceTimersByTime(ms);
const bench = (deviceId: string) => ({ ...silentBench(deviceId, NOON), isHere: true });

beforeEach(() => {
  vi.useFakeTimers({ now: 0, toFake: ["setTimeout", "clearTimeout", "Date"] });
  [sources, refused] = [[], 0];
  stream = new BoardStream({
    open: () => {
      sources.push(new FakeSource());
      return source();
    },
    now: () => NOON + Date.now(),
    chance: () => 0.5,
    later: (act, wait_ms) => {
      const timer = setTimeout(act, wait_ms);
      return () => clearTimeout(timer);
    },
    onRefused: () => {
      refused += 1;
    },
  });
  const end = stream.begin();
  return () => {
    end();
    vi.useRealTimers();
  };
});

test("it is live once the server has told the benches; then changes, by the server's clock", () => {
  expect([stream.isLive, stream.lostAt]).toEqual([false, null]);
  source().says({ isAll: true, benches: [bench("a"), bench("b")] });
  source().says({ benches: [{ ...bench("b"), isHere: false }] });
  expect([stream.isLive, stream.serverNow]).toEqual([true, NOON + AHEAD]);
  expect([...stream.board.values()].map(({ deviceId, isHere }) => [deviceId, isHere])).toEqual([
    ["a", true],
    ["b", false],
  ]);
});

test("a connection that is cut is not live until it speaks again, and what was seen stays", () => {
  source().says({ isAll: true, benches: [bench("a")] });
  pass(1000);
  source().fails(CONNECTING);
  expect([stream.isLive, stream.lostAt, stream.board.size]).toEqual([false, NOON + 1000, 1]);
  pass(3000);
  source().says({});
  expect([stream.isLive, stream.lostAt, sources.length, refused]).toEqual([true, null, 1, 0]);
});

test("one that is refused is asked for anew after a while, and whoever looks is told", () => {
  source().fails(CLOSED);
  expect([refused, sources.length]).toEqual([1, 1]);
  pass(1600);
  expect(sources).toHaveLength(2);
  source().fails(CLOSED);
  pass(1600);
  expect(sources).toHaveLength(2);
  pass(1600);
  expect(sources).toHaveLength(3);
});

test("a server that takes the connection and says nothing, or nothing more, is left for a new connection", () => {
  pass(SILENCE_MS);
  expect(sources).toHaveLength(1);
  pass(10_000);
  expect([sources.length, sources[0]?.isClosed]).toEqual([2, true]);
  source().says({ isAll: true });
  for (let beat = 0; beat < 5; beat++) {
    pass(15_000);
    source().beats();
  }
  expect([stream.isLive, sources.length]).toEqual([true, 2]);
  pass(SILENCE_MS + 10_000);
  expect([stream.isLive, sources.length, stream.lostAt !== null]).toEqual([false, 3, true]);
});

test("what another version tells is passed over", () => {
  source().says({ isAll: true, benches: [bench("a")] });
  source().onmessage?.call(source() as never, { data: "{" } as MessageEvent);
  source().says({ v: 2 } as never);
  expect(stream.board.size).toBe(1);
});
