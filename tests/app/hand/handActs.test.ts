import type { KeyboardEvent } from "react";
import { describe, expect, test, vi } from "vitest";
import { againAct, newAct, stopAct, takeKey, withDigits } from "../../../src/app/hand/handActs";
import { keysHelp } from "../../../src/app/hand/keysHelp";

const press = (key: string, more: object = {}) => {
  const preventDefault = vi.fn();
  return { key, ctrlKey: false, metaKey: false, altKey: false, repeat: false, preventDefault, ...more };
};
const take = (event: ReturnType<typeof press>, acts: Parameters<typeof takeKey>[1]) =>
  takeKey(event as unknown as KeyboardEvent, acts);

describe("what there is to do beside turning", () => {
  test("is done by its key, in either case, and by no other", () => {
    const [again, another] = [vi.fn(), vi.fn()];
    const acts = [againAct(again), newAct("New lock", "takes another lock", another)];
    for (const key of ["r", "R", "x"]) take(press(key), acts);
    take(press("n", { ctrlKey: true }), acts);
    expect(again).toHaveBeenCalledTimes(2);
    expect(another).not.toHaveBeenCalled();
  });

  test("space does not scroll the page, even where there is nothing to record or the key is held", () => {
    const record = vi.fn();
    const [open, held, closed] = [press(" "), press(" ", { repeat: true }), press(" ")];
    take(open, [stopAct(record, false)]);
    take(held, [stopAct(record, false)]);
    take(closed, [stopAct(record, true)]);
    expect(record).toHaveBeenCalledTimes(1);
    for (const { preventDefault } of [open, held, closed]) expect(preventDefault).toHaveBeenCalledOnce();
  });

  test("the switch for the digits comes before all else, where there is one", () => {
    const acts = [againAct(vi.fn())];
    expect(withDigits(acts, { strength: "hidden", toggle: null })).toBe(acts);
    const [first] = withDigits(acts, { strength: "faint", toggle: vi.fn() });
    expect(first).toMatchObject({ key: "d", label: "Show digits" });
    expect(withDigits(acts, { strength: "shown", toggle: vi.fn() })[0]?.label).toBe("Hide digits");
  });
});

describe("the help for the keys", () => {
  test("is made of what turns the dial, what there is to do, and what the exercise adds", () => {
    const help = keysHelp([stopAct(vi.fn(), true), againAct(vi.fn())], ["You cannot start a try again."]);
    expect(help[0]).toMatch(/^Arrow keys turn the dial/);
    expect(help.slice(-2)).toEqual(["Space records a stop. R starts again.", "You cannot start a try again."]);
    expect(keysHelp([])).not.toContain("");
  });
});
