import { problemWords } from "../../../src/app/exercises/zeroing/playWords";
import { opposite, signOf } from "../../../src/lock/dial";
import type { PlayMark } from "../../../src/zeroing/playEstimate";
import {
  type PlayContext,
  type PlayEvent,
  type PlayProblem,
  playMachine,
  STOPS_WANTED,
} from "../../../src/zeroing/playMachine";
import { expect, test } from "../page";
import { Zeroing, ZeroingHand } from "../zeroing";
import { type ChartStep, pagePaths, wayTo } from "./chartPaths";

type Step = ChartStep<PlayEvent, PlayContext>;

/** The number that is answered: how it is marked depends on the lock. */
const ANSWER = 1;
const MARK = { answer: ANSWER } as PlayMark;
const EVENTS: readonly PlayEvent[] = [
  { type: "dial.turned", turn: "right" },
  { type: "dial.turned", turn: "left" },
  { type: "stop.asked", seen: 0, problem: null },
  { type: "stop.asked", seen: 0, problem: "cam-waits" },
  { type: "stop.asked", seen: 0, problem: "off-the-line" },
  { type: "answer.marked", mark: MARK },
  { type: "stops.restarted" },
];

const choiceOf = (event: PlayEvent) =>
  event.type === "dial.turned" ? ` ${event.turn}` : event.type === "stop.asked" ? ` ${event.problem ?? "good"}` : "";

const PATHS = pagePaths(
  playMachine,
  EVENTS,
  (event: PlayEvent, { context }: Step["to"]) => `${event.type}${choiceOf(event)} ${context.turn}`,
  (event, { value, context: { stops, turn } }) => {
    if (event.type !== "stop.asked") return true;
    // Nothing is recorded before the dial has been turned, and of a recorded stop there is one answer.
    if (turn === null || value === "marked") return false;
    if (value === "kept") return event.problem === null;
    return event.problem !== null || stops[turn].length < STOPS_WANTED;
  },
);

/** Goes where a stop asked for is refused for a reason, or where it is good, and asks for it. */
async function askStop(hand: ZeroingHand, problem: PlayProblem | null, { value, context }: Step["from"]) {
  const side = context.turn;
  if (side !== null && value === "turning") {
    if (problem === null) await hand.turnOntoMark(side);
    else {
      await hand.turnOnto(opposite(side), 20);
      await hand.keys.turnBy(signOf(side) * (problem === "cam-waits" ? 0.1 : 60));
    }
  }
  await hand.zeroing.dial.press(" ");
}

async function make(hand: ZeroingHand, { event, from }: Step): Promise<void> {
  const { page } = hand.zeroing;
  if (event.type === "dial.turned") await hand.keys.turnBy(5 * signOf(event.turn));
  else if (event.type === "stop.asked") await askStop(hand, event.problem, from);
  else if (event.type === "stops.restarted") await hand.zeroing.dial.press("r");
  else {
    await page.getByLabel("The play is").fill(String(ANSWER));
    await page.keyboard.press("Enter");
  }
}

/** What the page shows of its state. */
async function seenOn({ page, bench }: Zeroing) {
  const panel = page.getByRole("region", { name: "Find the play" });
  const counted = async (side: string) =>
    ((await panel.getByRole("row", { name: new RegExp(`^${side}`) }).textContent()) ?? "").match(/\d+\.\d/g)?.length ??
    0;
  return {
    stops: [await counted("right"), await counted("left")],
    last: await panel.getByRole("status").first().textContent(),
    isMarked: (await page.locator(".zeroing-headline").count()) > 0,
    canRecord: await bench.page.getByRole("button", { name: /^Record this stop/ }).isEnabled(),
  };
}

const expectedIn = ({ context }: Step["to"]) => ({
  stops: [context.stops.right.length, context.stops.left.length],
  last: problemWords(context),
  isMarked: context.mark !== null,
  canRecord: context.turn !== null && context.mark === null,
});

test("the page is asked for every state of finding the play, and every event in it", () => {
  const steps = PATHS.flat();
  const arrows = new Set(steps.map(({ arrow }) => arrow));
  process.stdout.write(`play on the page: ${arrows.size} arrows, ${PATHS.length} paths, ${steps.length} steps\n`);
  expect(new Set(steps.map(({ to }) => to.value))).toEqual(new Set(Object.keys(playMachine.states)));
  expect(new Set(steps.map(({ event }) => event.type + choiceOf(event))).size).toBe(EVENTS.length);
});

for (const [k, path] of PATHS.entries()) {
  test(`the page shows the chart's state at every step of path ${k + 1}`, async ({ page }) => {
    test.setTimeout(180_000);
    await page.clock.install();
    const zeroing = new Zeroing(page);
    await zeroing.open();
    await page.getByRole("tab", { name: "Find the play" }).click();
    const hand = new ZeroingHand(zeroing);
    for (const [i, step] of path.entries()) {
      await make(hand, step);
      const message = wayTo(path, i);
      await expect.poll(() => seenOn(zeroing), { message, timeout: 3000 }).toEqual(expectedIn(step.to));
    }
  });
}
