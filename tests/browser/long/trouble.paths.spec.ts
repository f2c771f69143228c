import type { Page } from "@playwright/test";
import type { Trouble } from "../../../src/handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../../src/handover/trouble/troubleGuide";
import { type TroubleContext, type TroubleEvent, troubleMachine } from "../../../src/handover/trouble/troubleMachine";
import { arrowsLeft } from "../../support/drawnArrows";
import { Bench } from "../bench";
import { expect, test } from "../page";
import { type ChartStep, pagePaths, wayTo } from "./chartPaths";

type Step = ChartStep<TroubleEvent, TroubleContext>;

const NAMED: Trouble = { kind: "dial-heavy", part: null, size: 2 };
const EVENTS: readonly TroubleEvent[] = [
  { type: "try.made" },
  { type: "measurement.made" },
  { type: "diagnosis.named", named: NAMED },
  { type: "diagnosis.withdrawn" },
  { type: "condition.told" },
  { type: "bench.restarted" },
];
/** More is only more of the same. */
const MOST = 1;

const paths = pagePaths(
  troubleMachine,
  EVENTS,
  ({ type }: TroubleEvent, { context: { tries, measurements } }: Step["to"]) => `${type} ${tries} ${measurements}`,
  ({ type }, { context }) =>
    (type !== "try.made" || context.tries < MOST) && (type !== "measurement.made" || context.measurements < MOST),
);

async function make(page: Page, { event }: Step): Promise<void> {
  // A button's name may end in its key.
  const press = (name: string) =>
    page
      .getByRole("button", { name: new RegExp(`^${name}`) })
      .first()
      .press("Enter");
  switch (event.type) {
    case "try.made":
      return press("Dial and draw");
    case "measurement.made":
      return press("Pull left");
    case "diagnosis.named":
      await page.getByRole("radio", { name: TROUBLE_GUIDE[NAMED.kind].title }).check();
      await page.getByLabel(TROUBLE_GUIDE[NAMED.kind].sizeLabel).fill(String(NAMED.size));
      return press("Name it");
    case "diagnosis.withdrawn":
      return press("Take it back");
    case "condition.told":
      return press("Show the answer");
    case "bench.restarted":
      return press("Same again");
  }
}

/** Which state the page shows, and what it has taken down. */
async function seenOn(page: Page) {
  const shows = {
    measuring: page.getByRole("form", { name: "Name it" }),
    named: page.getByRole("region", { name: "Your diagnosis" }),
    told: page.getByRole("region", { name: "What it was" }),
  };
  const rows = await page.getByRole("region", { name: "Seen so far" }).locator("tbody tr").allTextContents();
  const value: string[] = [];
  for (const [state, part] of Object.entries(shows)) if (await part.isVisible()) value.push(state);
  const tries = rows.filter((row) => row.includes("Steady hand")).length;
  return { value, tries, measurements: rows.length - tries };
}

test("the page of the trouble bench is asked for every arrow of its chart", () => {
  const steps = paths.flat();
  process.stdout.write(`trouble on the page: ${steps.length} steps, ${paths.length} paths\n`);
  const taken = steps.map(({ from, event }) => ({ from: troubleMachine.resolveState(from as never), event }));
  expect(arrowsLeft(troubleMachine, taken)).toEqual([]);
});

for (const [k, path] of paths.entries()) {
  test(`the trouble bench shows the chart's state at every step of path ${k + 1}`, async ({ page }) => {
    await page.goto("#/handover?view=trouble&profile=three-wheel&pool=gates-tight&seed=6");
    await new Bench(page).dial.waitFor();
    for (const [i, step] of path.entries()) {
      await make(page, step);
      const { value, context } = step.to;
      await expect
        .poll(() => seenOn(page), { message: wayTo(path, i), timeout: 3000 })
        .toEqual({ value: [value], tries: context.tries, measurements: context.measurements });
    }
  });
}
