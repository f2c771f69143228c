import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Board, boardAfter, NEW_BOARD, selfCheckOf } from "../../src/fitting/board";
import { drawDoor, trayAt } from "../../src/fitting/doorToFit";
import { lockToFit } from "../../src/fitting/fittedLock";
import type { BoardAct } from "../../src/fitting/fittingAct";
import { TRAINING_SIZES } from "../../src/fitting/fittingSizes";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { seededChance } from "../../src/statistics/chance";

const chance = seededChance(1);
const HARMS = TRAINING_SIZES.staticHarms;
/** A touch that harms nothing. */
const luck = 0.99;
const strap = { type: "strap.put" } as const;
const plug = { type: "cable.plugged", luck } as const;
const right = { type: "battery.connected", leads: "right", luck } as const;
const reversed = { type: "battery.connected", leads: "reversed", luck } as const;
const off = { type: "battery.disconnected", luck } as const;
const fuse = { type: "fuse.replaced", luck } as const;

const having = (...acts: readonly BoardAct[]): Board =>
  acts.reduce((board, act) => {
    const done = boardAfter(board, act, HARMS);
    if (typeof done === "string") throw new Error(`${act.type}: ${done}`);
    return done;
  }, NEW_BOARD);

describe("an electronic lock", () => {
  test.each([
    ["nothing connected", [], "silent"],
    ["cable, then battery", [plug, right], "passes"],
    ["battery, then cable", [right, plug], "no-encoder"],
    ["that, and started again", [right, plug, off, right], "passes"],
    ["no cable", [right], "no-encoder"],
    ["the leads reversed", [plug, reversed], "silent"],
    ["put right, the fuse still blown", [plug, reversed, off, right], "silent"],
    ["put right, with another fuse", [plug, reversed, off, right, fuse], "passes"],
    ["another fuse with the leads still reversed, which blows too", [plug, reversed, fuse, off, right], "silent"],
    ["the cable pulled while it runs", [plug, right, { type: "cable.pulled", luck }], "no-encoder"],
  ] as const)("%s: its self-check %s", (_, acts, shows) => {
    expect(selfCheckOf(having(...acts))).toBe(shows);
    expect(selfCheckOf(having(strap, ...acts))).toBe(shows);
  });

  test("is never harmed by a hand that wears the strap, and by a bare one as often as the table says", () => {
    const runs = 20_000;
    let harmed = 0;
    for (let k = 0; k < runs; k++) {
      const at = (k + 0.5) / runs;
      expect(having(strap, { ...plug, luck: at })).toMatchObject({ harm: "none", bareTouches: 0 });
      if (having({ ...plug, luck: at }).harm !== "none") harmed += 1;
    }
    expect(harmed / runs).toBeCloseTo(HARMS, 3);
  });

  test("that static has harmed is dead or unsteady, and another board is whole again", () => {
    const unsteady = having({ ...plug, luck: HARMS * 0.9 }, strap, right);
    const dead = having({ ...plug, luck: HARMS * 0.1 }, strap, right);
    expect([unsteady, dead].map(selfCheckOf)).toEqual(["unsteady", "silent"]);
    expect(boardAfter(unsteady, { type: "board.replaced", luck }, HARMS)).toBe("wires-hold-board");
    const again = having({ ...plug, luck: 0 }, strap, { type: "cable.pulled", luck }, { type: "board.replaced", luck });
    expect(again).toEqual({ ...NEW_BOARD, isStrapOn: true, bareTouches: 1 });
  });

  test("that is touched again is never the better for it", () => {
    const order = ["none", "unsteady", "dead"];
    const part = fc.double({ min: 0, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(fc.array(part, { maxLength: 8 }), part, (lucks, last) => {
        const touches = [...lucks, last].map((one) => ({ type: "fuse.replaced", luck: one }) as const);
        const [before, now] = [having(...touches.slice(0, -1)), having(...touches)];
        expect(order.indexOf(now.harm)).toBeGreaterThanOrEqual(order.indexOf(before.harm));
        expect(now.bareTouches).toBe(touches.length);
      }),
    );
  });

  test("is the shipped one that reads turns of its dial, and no other", () => {
    const electronic = SHIPPED_PROFILES.filter(
      (profile) => trayAt(drawDoor(profile, chance), lockToFit(profile, chance)).board !== null,
    ).map(({ id }) => id);
    expect(electronic).toEqual(["dial-encoder"]);
  });
});
