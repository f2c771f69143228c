import { EEPROMMemoryBackend } from "avr8js";
import { describe, expect, test } from "vitest";
import { Attempt } from "../../../src/dialing/attempt";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { DialMoves } from "../../../src/realdial/sources/dialMoves";
import type { WireEvent } from "../../../src/realdial/wire/wireEvent";
import { WireReader } from "../../../src/realdial/wire/wireReader";
import { committedImage, SimulatedBoard } from "../../support/board/simulatedBoard";

const COUNTS = 2400;
const IMAGE = committedImage();

/** A board that has said its hello, and who reads it. */
function connected(eeprom?: EEPROMMemoryBackend) {
  const board = new SimulatedBoard(IMAGE, eeprom);
  const reader = new WireReader(0);
  const read = () => {
    // The last line is on its way for some milliseconds.
    board.rest(20);
    return reader.take(board.take(), board.ms);
  };
  const events = read();
  return { board, reader, read, events };
}

const turnsIn = (events: readonly WireEvent[]) =>
  events.flatMap((event) => (event.type === "moved" ? [event.turns] : []));
const typesIn = (events: readonly WireEvent[]) => new Set(events.map(({ type }) => type));

describe("the firmware, on a simulated board", () => {
  test("says its hello", () => {
    expect(connected().events).toEqual([{ type: "ready", countsPerTurn: COUNTS, at: expect.any(Number) }]);
  });

  test.each([2, 10, 25, 50])("counts %i turns a second exactly, both ways", (speed) => {
    const { board, read, reader } = connected();
    board.turn(COUNTS + 7, speed * COUNTS);
    const left = read();
    expect(turnsIn(left).at(-1)).toBe(1 + 7 / COUNTS);
    board.turn(-3 * COUNTS, speed * COUNTS);
    const right = read();
    expect(turnsIn(right).at(-1)).toBe(-2 + 7 / COUNTS);
    expect(typesIn([...left, ...right])).toEqual(new Set(["moved"]));
    expect(reader.tally).toMatchObject({ bad: 0, stale: 0, lost: 0 });
  });

  test("tells that it could not follow, beyond what it can", () => {
    const { board, read } = connected();
    board.turn(3 * COUNTS, 75 * COUNTS);
    const missed = read().flatMap((event) => (event.type === "missed" ? [event.steps] : []));
    expect(missed.length).toBeGreaterThan(0);
  });

  test("counts a bouncing contact once", () => {
    const { board, read } = connected();
    for (const sign of [1, 1, 1, -1, 1, -1]) {
      board.stepWithBounce(sign, 6, 40);
      board.rest(3);
    }
    const events = read();
    expect(turnsIn(events).at(-1)).toBe(2 / COUNTS);
    expect(typesIn(events)).toEqual(new Set(["moved"]));
  });

  test("reports steps of both lines at once, and counts none", () => {
    const { board, read } = connected();
    board.turn(5, 1000);
    for (let k = 0; k < 3; k++) {
      board.skip();
      board.rest(1);
    }
    const events = read();
    expect(turnsIn(events).at(-1)).toBe(5 / COUNTS);
    expect(events.reduce((sum, event) => sum + (event.type === "missed" ? event.steps : 0), 0)).toBe(3);
  });

  test("tells each press of the button once, however it bounces, and where the dial was", () => {
    const { board, read } = connected();
    board.turn(-48, 2400);
    const bounce = () => {
      for (let k = 0; k < 5; k++) {
        board.press();
        board.rest(0.4);
        board.release();
        board.rest(0.4);
      }
    };
    for (let press = 0; press < 2; press++) {
      bounce();
      board.press();
      board.rest(60);
      bounce();
      board.rest(60);
    }
    const presses = read().filter(({ type }) => type === "pressed");
    expect(presses).toEqual([
      { type: "pressed", turns: -0.02, at: expect.any(Number) },
      { type: "pressed", turns: -0.02, at: expect.any(Number) },
    ]);
  });

  test("answers when it is asked, and speaks at rest", () => {
    const { board, reader, read } = connected();
    board.hear("?");
    board.rest(1000);
    expect(read()).toEqual([]);
    expect(reader.tally).toEqual({ read: 6, bad: 0, stale: 0, lost: 0 });
    expect(reader.silence(board.ms)).toBeNull();
  });

  test("has another number at every start, so that a reset makes no motion", () => {
    const eeprom = new EEPROMMemoryBackend(1024);
    const { board, reader, read } = connected(eeprom);
    board.turn(600, 2400);
    read();
    const again = new SimulatedBoard(IMAGE, eeprom);
    again.rest(10);
    again.turn(24, 2400);
    again.rest(30);
    const after = reader.take(again.take(), board.ms + again.ms);
    expect([...typesIn(after)]).toEqual(["restarted", "ready", "moved"]);
    expect(turnsIn(after).at(-1)).toBe(0.26);
  });
});

describe("a lock turned by the board's bytes", () => {
  const profile = shippedProfile("three-wheel");
  const combination = [38, 71, 26];
  const path = idealMotion(profile, combination, 0);

  /** Turns from stop to stop, each leg at its own speed, and stays there for a moment. */
  function dialed(speeds: readonly number[], board: SimulatedBoard): void {
    path.slice(1).forEach((stop, k) => {
      const steps = Math.round(((stop - (path[k] ?? 0)) * COUNTS) / profile.graduations);
      board.turn(steps, (speeds[k] ?? 2) * COUNTS);
      board.rest(300);
    });
  }

  test.each([
    { why: "at any speed", speeds: [10, 25, 2, 2], off: 0, opens: true },
    { why: "but not one number off by two", speeds: [25, 25, 25, 2], off: 2, opens: false },
  ])("opens $why", ({ speeds, off, opens }) => {
    const { board, read } = connected();
    const moves = new DialMoves(profile.graduations);
    moves.takeUp(0);
    const attempt = new Attempt(profile, [38, 71 + off, 26], { dial: 0 });
    dialed(speeds, board);
    const stands: number[] = [];
    for (const event of read()) {
      if (event.type !== "moved") continue;
      attempt.turnBy(moves.moveTo(event.turns), event.at);
      stands.push(attempt.dial);
    }
    expect(attempt.opened).toBe(opens);
    // Every stop to the millionth of a graduation.
    for (const stop of path.slice(1, 4)) expect(stands).toContain(stop);
    if (opens) expect(attempt.dial).toBe(path.at(-1));
  });
});
