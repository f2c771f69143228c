import type { Page } from "@playwright/test";
import { type ZeroingEvent, type ZeroingState, zeroingMachine } from "../../../src/zeroing/zeroingMachine";
import { profileRules } from "../../../src/zeroing/zeroingRules";
import { expect, test } from "../page";
import { LOCK, Zeroing, ZeroingHand } from "../zeroing";
import { wayTo } from "./chartPaths";
import { type ZeroingStep, zeroingArrows, zeroingPaths } from "./zeroingPaths";

/** What the strip says of a side: beyond the readings wanted it only counts them. */
const counted = (count: number, wanted: number) => (count > wanted ? `${count} stops` : `${count} of ${wanted} stops`);

if (LOCK.kind !== "dial-encoder") throw new Error("the lock to be zeroed is a dial-encoder lock");
const RULES = profileRules(LOCK);
const PATHS = zeroingPaths(RULES);

/** What the page says in a state, and which plate of the strip it marks. */
const TOLD: Readonly<Record<ZeroingState, { readonly say: string; readonly marked: readonly number[] }>> = {
  ringLoose: { say: "Turn the ring until its index is under the line, then clamp it.", marked: [0] },
  firstSeries: { say: "Turn right only, onto zero. Stop. Record the stop.", marked: [1] },
  secondSeries: { say: "Now turn left only, onto zero. Stop. Record the stop.", marked: [2] },
  zeroSet: { say: "The zero is set in both directions. Prove it.", marked: [3] },
  notSet: { say: "The zero is not set.", marked: [] },
};

/** What the page shows of its state. */
const seenOn = (page: Page) =>
  page.evaluate(() => {
    const steps = [...document.querySelectorAll(".strip > li")];
    const last = document.querySelector("[data-testid=zeroing-last]")?.textContent ?? "";
    return {
      say: document.querySelector("[data-testid=zeroing-state]")?.textContent,
      marked: steps.flatMap((step, k) => (step.getAttribute("aria-current") === "step" ? [k] : [])),
      plates: steps.map((step) => step.querySelector("div")?.textContent),
      pegs: document.querySelectorAll(".socket-peg").length,
      struck: document.querySelectorAll(".socket-refused").length,
      isRefused: last.startsWith("Not counted."),
      refused: /Not counted so far: (\d+)/.exec(document.querySelector("main")?.textContent ?? "")?.[1],
    };
  });

function expectedAfter({
  event,
  to: { value, context },
}: ZeroingStep): Readonly<Record<keyof Awaited<ReturnType<typeof seenOn>>, unknown>> {
  const { accepted, wanted, refused } = context;
  const side = value === "firstSeries" ? "right" : value === "secondSeries" ? "left" : null;
  const isRefused = event.type === "reading.refused";
  return {
    ...TOLD[value],
    plates: [
      value === "ringLoose" ? "loose" : "clamped",
      counted(accepted.right.length, wanted.right),
      counted(accepted.left.length, wanted.left),
      value === "zeroSet" ? "set" : "not set",
    ],
    pegs: accepted.right.length + accepted.left.length,
    struck: isRefused ? 1 : 0,
    isRefused,
    refused: side === null ? undefined : String(refused[side]),
  };
}

/** Makes an event happen on the page by keys and clicks. */
async function make(event: ZeroingEvent, { value }: ZeroingStep["from"], hand: ZeroingHand): Promise<void> {
  const { zeroing } = hand;
  const asked = value === "secondSeries" ? "left" : "right";
  switch (event.type) {
    case "ring.clamped":
      return hand.clamp();
    case "ring.loosened":
      return zeroing.button("Loosen the ring").click({ timeout: 5000 });
    case "reading.accepted":
      return hand.take(asked, event.reading.deviation);
    case "reading.refused":
      return hand.miss(event.reason, asked);
    case "series.restarted":
      return zeroing.button("Restart this side").click();
    case "series.reopened":
      return zeroing.button(`One more stop ${event.side}`).click();
    case "zeroing.restarted":
      return zeroing.dial.press("r");
  }
}

test("the page is asked for every state and transition of the zeroing chart", () => {
  const steps = PATHS.flat();
  const states = new Set(steps.flatMap(({ from, to }) => [from.value, to.value]));
  const arrows = new Set(steps.map(({ arrow }) => arrow));
  const all = Object.keys(zeroingMachine(RULES).states);
  const known = zeroingArrows(RULES);
  process.stdout.write(
    `zeroing chart on the page: ${states.size} of ${all.length} states, ${arrows.size} of ${known.size} transitions, ` +
      `${PATHS.length} paths, ${steps.length} steps\n`,
  );
  expect([...states].sort()).toEqual(all.sort());
  expect([...arrows].sort()).toEqual([...known].sort());
});

for (const [k, path] of PATHS.entries()) {
  const end = path.at(-1)?.arrow ?? "nowhere";
  test(`the page shows the chart's state at every step of path ${k + 1}, which ends with ${end}`, async ({ page }) => {
    await page.clock.install();
    const zeroing = new Zeroing(page);
    await zeroing.open();
    const hand = new ZeroingHand(zeroing);
    for (const [i, step] of path.entries()) {
      await make(step.event, step.from, hand);
      const message = wayTo(path, i);
      await expect.poll(() => seenOn(page), { message, timeout: 3000 }).toEqual(expectedAfter(step));
    }
  });
}
