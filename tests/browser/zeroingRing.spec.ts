import { expect, test } from "./page";
import { PER_TURN, Zeroing } from "./zeroing";

/** Runs in the page: the middle of the ring as drawn, and its radius, pixels. */
function drawn(ring: SVGElement | HTMLElement): readonly [x: number, y: number, radius: number] {
  if (!(ring instanceof SVGCircleElement)) throw new Error("the ring is no circle");
  const matrix = ring.getScreenCTM();
  if (matrix === null) throw new Error("the ring is not drawn");
  return [matrix.e, matrix.f, Math.hypot(matrix.a, matrix.b) * ring.r.baseVal.value];
}

/** A place on the ring, so many graduations clockwise from its top, in the page. */
async function onRing({ page }: Zeroing, graduations: number): Promise<readonly [x: number, y: number]> {
  const [x, y, radius] = await page.getByTestId("ring-grip").evaluate(drawn);
  const angle = (graduations * 2 * Math.PI) / PER_TURN;
  return [x + radius * Math.sin(angle), y - radius * Math.cos(angle)];
}

test("the loose ring is dragged true by its rim, and a clamped ring cannot be dragged", async ({ page }) => {
  const zeroing = new Zeroing(page);
  await zeroing.open();
  const before = await zeroing.indexError();
  expect(Math.abs(before)).toBeGreaterThan(0.2);
  // Taken at its right side and dragged along the rim by as much as the index stands off.
  const from = await onRing(zeroing, 25);
  const to = await onRing(zeroing, 25 + before);
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  await page.mouse.move(...to);
  await page.mouse.up();
  expect(Math.abs(await zeroing.indexError())).toBeLessThanOrEqual(0.1);
  // Once let go it does not follow.
  await page.mouse.move(...from);
  expect(Math.abs(await zeroing.indexError())).toBeLessThanOrEqual(0.1);
  await zeroing.button("Clamp the ring").press("Enter");
  await expect(zeroing.steps.first()).toContainText("clamped");
  await expect(page.getByTestId("ring-grip")).toHaveCount(0);
});
