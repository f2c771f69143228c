import type { Page } from "@playwright/test";
import type { SittingRules } from "../../../src/drill/sheet/sheet";
import { type SittingEvent, type SittingState, sittingMachine } from "../../../src/drill/sitting/sittingMachine";
import type { SittingContext } from "../../../src/drill/sitting/sittingMemory";
import { sittingPlan } from "../../../src/drill/sitting/sittingPlan";
import { arrowsLeft } from "../../support/drawnArrows";
import { dialingStation, testSheet } from "../../support/testSheet";
import { expect, test } from "../page";
import { openSheet } from "../sittingByKeys";
import { type ChartStep, pagePaths, wayTo } from "./chartPaths";

type Step = ChartStep<SittingEvent, SittingContext>;

const LIMIT_S = 300;
const LATE = { type: "time.checked", now_ms: 2 * LIMIT_S * 1000 } as const;
const TIMED = [
  "sitting.started",
  "try.begun",
  "try.finished",
  "question.answered",
  "sitting.paused",
  "sitting.resumed",
  "page.reloaded",
  "sitting.abandoned",
] as const;
const EVENTS: readonly SittingEvent[] = [
  { type: "instructions.read" },
  ...TIMED.map((type) => ({ type, now_ms: 0 })),
  LATE,
];

const sheetWith = (rules: Partial<SittingRules>) =>
  testSheet({
    title: "Walked sitting",
    stations: [dialingStation({ repetitions: 2 })],
    sitting: {
      pauseAllowed: true,
      onReload: "resume",
      clockHideable: true,
      timeLimit_s: LIMIT_S,
      questions: { topics: [{ topic: "zeroing", count: 1 }], passMark: 1 },
      ...rules,
    },
  });

const CASES = [
  { name: "with pauses", sheet: sheetWith({}) },
  { name: "broken off by a reload", sheet: sheetWith({ onReload: "broken-off" }) },
  { name: "whose clock runs over a reload", sheet: sheetWith({ pauseAllowed: false }) },
].map(({ name, sheet }) => {
  const machine = sittingMachine(sittingPlan(sheet));
  const paths = pagePaths(
    machine,
    EVENTS,
    ({ type }: SittingEvent, { context: { triesDone, isTryBegun } }: Step["to"]) =>
      `${type} ${triesDone} ${isTryBegun}`,
    // Few breaks: else there is no end of memories.
    ({ type }, { context: { pauses, interruptions } }) =>
      pauses + interruptions < 2 || (type !== "sitting.paused" && type !== "page.reloaded"),
  );
  return { name, sheet, machine, paths };
});

/**
 * What a page that looks at its clock twice a second never does: it ends the sitting before anything comes too late. And what
 * takes a device that loses the hand (`encoderSitting.spec.ts`).
 */
const NOT_BY_KEYS = [
  "atStation by try.begunAgain",
  "atStation by try.finished #1",
  "answering by question.answered #1",
];

/** What each state is known by. */
const SHOWS: Readonly<Record<SittingState, (page: Page) => ReturnType<Page["locator"]>>> = {
  readingInstructions: (page) => page.getByRole("button", { name: "I have read it" }),
  ready: (page) => page.getByRole("button", { name: "Start the clock" }),
  atStation: (page) => page.getByRole("region", { name: "Sitting", exact: true }),
  answering: (page) => page.getByText("question 1 of 1"),
  paused: (page) => page.getByText("You have paused."),
  interrupted: (page) => page.getByText("The page was reloaded."),
  finished: (page) => page.getByText(/^(The sitting was finished|Time ran out)/),
  brokenOff: (page) => page.getByText("The sitting was broken off."),
};

async function seenOn(page: Page): Promise<string[]> {
  const seen: string[] = [];
  for (const [state, shown] of Object.entries(SHOWS)) if (await shown(page).isVisible()) seen.push(state);
  return seen;
}

class Candidate {
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async make({ event, from }: Step): Promise<void> {
    const { page } = this;
    switch (event.type) {
      case "instructions.read":
        return this.press("I have read it");
      case "sitting.started":
        await page.getByRole("textbox", { name: /your name/i }).fill("Orrin");
        return this.press("Start the clock");
      case "try.begun":
        // A try that has ended stays in sight until the next is asked for.
        if (await page.getByRole("button", { name: "Next try" }).isVisible()) await this.press("Next try");
        return page.getByRole("slider", { name: "Dial" }).press("ArrowLeft");
      case "try.finished":
        return this.press("End this try");
      case "question.answered":
        await page.getByRole("radio").first().check();
        return this.press("Answer");
      case "sitting.paused":
        return this.press("Pause");
      case "sitting.resumed":
        return this.press("Go on");
      case "page.reloaded":
        await page.reload();
        return;
      case "time.checked":
        return page.clock.runFor(event.now_ms);
      case "sitting.abandoned":
        expect(from.value).not.toBe("ready");
        await this.press("Break off");
        return this.press("End it");
    }
  }

  private press(name: string): Promise<void> {
    return this.page.getByRole("button", { name, exact: true }).press("Enter");
  }
}

test("the page of sittings is asked for every arrow of the chart", () => {
  const left = CASES.map(({ machine, paths }) => {
    const steps = paths.flat();
    process.stdout.write(`sitting on the page: ${steps.length} steps, ${paths.length} paths\n`);
    return arrowsLeft(
      machine,
      steps.map(({ from, event }) => ({ from: machine.resolveState(from as never), event })),
    );
  });
  const [first = []] = left;
  expect(first.filter((arrow) => left.every((those) => those.includes(arrow)))).toEqual(NOT_BY_KEYS);
});

for (const { name, sheet, paths } of CASES) {
  for (const [k, path] of paths.entries()) {
    test(`a sitting ${name} shows the chart's state at every step of path ${k + 1}`, async ({ page }) => {
      await page.clock.install();
      await openSheet(page, sheet);
      const candidate = new Candidate(page);
      for (const [i, step] of path.entries()) {
        await candidate.make(step);
        await expect.poll(() => seenOn(page), { message: wayTo(path, i), timeout: 5000 }).toEqual([step.to.value]);
      }
    });
  }
}
