import { idealMotion } from "../../../src/dialing/idealMotion";
import type { Combination } from "../../../src/lock/combination";
import type { Graduations } from "../../../src/lock/dial";
import type { Profile } from "../../../src/lock/profile";
import { LEFT_KEYS, RIGHT_KEYS, RIM, stepsOf } from "../../browser/hands";
import type { KeyMove, RemotePage } from "./remotePage";

/** Longest move along the rim, part of a turn: every move takes a driven browser a tenth of a second or more. */
const ARC = 1 / 4;

/** The dial of any screen. */
export const DIAL = "[role=slider][aria-label=Dial]";

/** Turns a dial of a driven page. @param by - graduations, left positive */
export type TurnBy = (by: Graduations) => Promise<void>;

const pressed = (key: string, count: number): KeyMove[] =>
  Array.from({ length: count }, () => [{ type: "keyDown", key } as const, { type: "keyUp", key } as const]).flat();

/** A hand on the keyboard. */
export const keyHand =
  (page: RemotePage, perTurn: number): TurnBy =>
  async (by) => {
    const [turns, tens, ones, tenths] = stepsOf(by, perTurn);
    const [page10, arrow, nudge] = by > 0 ? LEFT_KEYS : RIGHT_KEYS;
    await page.focus(DIAL);
    const whole = turns === 0 ? [] : [{ type: "keyDown", key: "Shift" } as const, ...pressed(page10, turns)];
    const end = turns === 0 ? [] : [{ type: "keyUp", key: "Shift" } as const];
    await page.keys([...whole, ...end, ...pressed(page10, tens), ...pressed(arrow, ones), ...pressed(nudge, tenths)]);
  };

/** A hand with the mouse that holds the rim and goes round with it; it lets go by itself when the page is left. */
export async function mouseHand(page: RemotePage, perTurn: number): Promise<TurnBy> {
  await page.focus(DIAL);
  const { x, y, radius } = await page.run<{ readonly x: number; readonly y: number; readonly radius: number }>(
    `const { left, top, width, height } = document.querySelector(arguments[0]).getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2, radius: width / 2 };`,
    DIAL,
  );
  const pointAt = (angle: Graduations) => {
    const radians = (angle / perTurn) * 2 * Math.PI;
    const reach = radius * RIM;
    return { x: Math.round(x - reach * Math.sin(radians)), y: Math.round(y - reach * Math.cos(radians)) };
  };
  let angle: Graduations = 0;
  await page.point(pointAt(0), "down");
  return async (by) => {
    const count = Math.max(1, Math.ceil(Math.abs(by) / (perTurn * ARC)));
    const from = angle;
    angle += by;
    await page.point(...Array.from({ length: count }, (_, k) => pointAt(from + (by * (k + 1)) / count)));
  };
}

/** Dials a combination as it should be, from where the dial is. */
export async function dialWith(
  page: RemotePage,
  turnBy: TurnBy,
  profile: Profile,
  numbers: Combination,
): Promise<void> {
  const from = Number(await page.attribute(DIAL, "aria-valuenow"));
  const path = idealMotion(profile, numbers, from, [], 5);
  for (const [i, position] of path.slice(1).entries()) await turnBy(position - (path[i] ?? 0));
}
