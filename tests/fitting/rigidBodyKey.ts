import { Box, Circle, Vec2, World } from "planck";
import type { KeyPastLever } from "../../src/fitting/keySeat";

/** Units of the engine for a millimeter: its shapes have a skin of a hundredth of a unit, a thousandth of a millimeter. */
const SCALE = 10;
/** How far the engine's skins and its tolerance of overlap reach, millimeters. */
export const SKIN_mm = 0.002;
const STEPS = 2000;

/**
 * A key's head on a cam that a general rigid-body engine turns once round past a lever; it knows nothing of locks. The judge
 * of how long the key is against the lever.
 *
 * @returns the part of the turn in which the engine has both touch, and how finely it is told
 */
export function touchingPart({ keyAt_mm, headRadius_mm, leverAt_mm }: KeyPastLever): {
  readonly part: number;
  readonly step: number;
} {
  const world = new World({ gravity: Vec2(0, 0), allowSleep: false });
  const lever = world.createBody({ position: Vec2(0, SCALE * (leverAt_mm + 50)) });
  lever.createFixture({ shape: new Box(SCALE * 200, SCALE * 50) });
  const cam = world.createBody({ type: "dynamic", bullet: true });
  const head = new Circle(Vec2(0, SCALE * keyAt_mm), SCALE * headRadius_mm);
  // A sensor feels the lever and is not thrown back by it: the cam goes round as a hand turns it.
  cam.createFixture({ shape: head, density: 1, isSensor: true });
  let touching = 0;
  for (let k = 0; k < STEPS; k++) {
    cam.setTransform(Vec2(0, 0), (2 * Math.PI * (k + 0.5)) / STEPS);
    cam.setLinearVelocity(Vec2(0, 0));
    cam.setAngularVelocity(0);
    world.step(1 / 60);
    for (let edge = cam.getContactList(); edge; edge = edge.next ?? null) if (edge.contact.isTouching()) touching += 1;
  }
  return { part: touching / STEPS, step: 1 / STEPS };
}
