import { afterEach, expect, test, vi } from "vitest";
import { SightedTurns } from "../../../../../../src/app/hand/sources/devices/camera/sightedTurns";
import { deviceProblem } from "../../../../../../src/app/hand/sources/devices/deviceWords";
import type { DeviceLink } from "../../../../../../src/app/hand/sources/devices/dialDevice";

afterEach(() => void vi.useRealTimers());

/** A dial on the screen at 0, and what is told to it. */
function screen() {
  const told: string[] = [];
  const link = {
    turned: (turns: number) => told.push(`turned ${turns.toFixed(2)}`),
    held: (why) => told.push(`held ${why?.code ?? "no more"}`),
    doubted: (why) => told.push(`doubted ${why.code}`),
    marked: (why) => told.push(`marked ${why}`),
    shown: () => ({ turns: 0, number: 0, perTurn: 100, keepsMoves: true }),
  } as Pick<DeviceLink, "turned" | "held" | "doubted" | "marked" | "shown"> as DeviceLink;
  return { told, turns: new SightedTurns(link) };
}

const at = (time: number, position: number | null, turnsInDoubt = false) =>
  ({ at: time, position, sight: "sure", reason: "none", turnsInDoubt, shown: null }) as const;

test("what is refused turns nothing and says why, and afterwards the dial has to come to the number first", () => {
  const { told, turns } = screen();
  const refused = deviceProblem("moves-kept", []);
  turns.take(at(0, 0), refused);
  turns.take(at(33, 0), refused);
  turns.take(at(400, 30));
  expect([told, turns.hasTakenOver]).toEqual([["held moves-kept", "held come-to"], false]);
  turns.take(at(433, 0));
  turns.take(at(466, 10));
  expect(told.slice(2)).toEqual(["held no more", "turned 0.00", "turned 0.10"]);
  expect(turns.hasTakenOver).toBe(true);
  turns.take(at(500, 20), refused);
  expect(told.at(-1)).toBe("held moves-kept");
  turns.take(at(700, 20));
  expect(told.at(-1)).toBe("held come-to");
});

test("a dial that is set up anew turns nothing until it is seen at the number again, and no turn is in doubt by that", () => {
  const { told, turns } = screen();
  turns.take(at(0, 0));
  turns.setUpAgain();
  turns.take(at(400, 30));
  expect(told).toEqual(["turned 0.00", "held set-up-again", "held come-to"]);
  turns.take(at(433, 0));
  expect(told.slice(3)).toEqual(["held no more", "turned 0.00"]);
});

test.each([
  [99.9, 100, "0"],
  [59.8, 60, "0"],
  [99.7, 100, "99.5"],
  [12.4, 100, "12.5"],
])("where the screen is at %d of %d, the dial is to come to %s", (number, perTurn, said) => {
  const told: unknown[] = [];
  const link = {
    held: (why) => told.push(why?.values),
    marked: () => undefined,
    shown: () => ({ turns: number / perTurn, number, perTurn, keepsMoves: true }),
  } as Pick<DeviceLink, "held" | "marked" | "shown"> as DeviceLink;
  new SightedTurns(link).take(at(0, 40));
  expect(told).toEqual([{ number: said }]);
});

test("a camera that has had no dial to turn for minutes is let go, one that has had one meanwhile is not", () => {
  const lost: string[] = [];
  let isThere = false;
  const link = {
    held: () => undefined,
    lost: (why) => lost.push(why.code),
    shown: () => (isThere ? { turns: 0, number: 0, perTurn: 100, keepsMoves: false } : null),
  } as Pick<DeviceLink, "held" | "lost" | "shown"> as DeviceLink;
  const turns = new SightedTurns(link);
  turns.take(at(0, null));
  turns.take(at(170_000, null));
  isThere = true;
  turns.take(at(175_000, null));
  isThere = false;
  turns.take(at(190_000, null));
  turns.take(at(360_000, null));
  expect(lost).toEqual([]);
  turns.take(at(371_000, null));
  expect(lost).toEqual(["unused"]);
});

test("a camera that stands still in the middle of a turn is told once, and what is under way is marked", () => {
  vi.useFakeTimers();
  const { told, turns } = screen();
  const stop = turns.watch();
  vi.advanceTimersByTime(5000);
  turns.take(at(0, 0));
  turns.take(at(33, 10));
  vi.advanceTimersByTime(900);
  expect(told).toEqual(["turned 0.00", "turned 0.10"]);
  vi.advanceTimersByTime(5000);
  expect(told.slice(2)).toEqual(["marked sight-lost", "held no-pictures"]);
  turns.take(at(6000, 40, true));
  turns.take(at(6200, 0));
  expect(told.slice(4)).toEqual(["held come-to", "held no more", "doubted sight-lost", "turned 0.10"]);
  stop();
  vi.advanceTimersByTime(5000);
  expect(told).toHaveLength(8);
});

test("no picture is missed of a page that was busy, nor of a dial that is set up again", () => {
  vi.useFakeTimers();
  const { told, turns } = screen();
  turns.watch();
  turns.take(at(0, 0));
  for (let k = 1; k <= 9; k++) {
    // The page had no time for 2 s: its clock runs late, and comes before the pictures that wait.
    vi.advanceTimersByTime(250);
    turns.take(at(2000 * k, 0));
  }
  turns.setUpAgain();
  vi.advanceTimersByTime(5000);
  expect(told).toEqual(["turned 0.00", ...Array(9).fill("turned 0.00"), "held set-up-again"]);
});
