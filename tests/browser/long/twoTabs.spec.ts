import type { Page } from "@playwright/test";
import { doorWith, Handover } from "../handover";
import { expect, test } from "../page";

/* Two tabs have the same work open and act in the same moment: one whole work is stored, and a tab whose act is not in it says so. */

const door = doorWith({});

/** Each work: its address, an act that both tabs have, one act of each tab and what its stored text has of it, and its key. */
const WORKS = [
  {
    name: "fitting",
    address: "#/fitting?profile=three-wheel&seed=3",
    first: "Hang it by one screw",
    acts: ["Put it on over the bushing", "Take the spare spindle"],
    codes: ["ring.put", "spindle.replaced"],
    key: "gatefall.fitting.three-wheel",
  },
  {
    name: "inspection",
    address: "#/fitting?view=find&profile=three-wheel&seed=3",
    first: "Turn the wheels",
    acts: ["Try every screw", "Look at the key"],
    codes: ['"screws"', '"key"'],
    key: "gatefall.inspection",
  },
  {
    name: "service visit",
    address: "#/fitting?view=service&profile=three-wheel&seed=12",
    first: "Have the door opened",
    acts: ["Hold the door open", "Take the cover off"],
    codes: ["door.held", "cover.taken"],
    key: "gatefall.service-visit",
  },
  {
    name: "handover",
    address: `#/handover?view=run&profile=${door.profile.id}&seed=${door.seed}&hands=off`,
    first: "Measure the height",
    acts: ["Align the ring", "Spin off"],
    codes: ["ring.aligned", "lock.spunOff"],
    key: "gatefall.handover-run",
  },
] as const;

const elsewhere = (page: Page) => page.getByText(/^Another tab has gone on with (a|this) /);

const buttonOf = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).first();

/** Does an act by its button; in a handover, where only one group of acts is shown, its group is chosen first. */
const press = (page: Page, name: string) =>
  page.url().includes("#/handover") ? new Handover(page).does(name) : buttonOf(page, name).press("Enter");

/** Waits until a tab has the work open. */
const opened = (page: Page, name: string) =>
  (page.url().includes("#/handover") ? new Handover(page).told : buttonOf(page, name)).waitFor({ state: "attached" });

/** What of a work happened, in order, whatever its kind: without times and marks. */
function happened(text: string | null): string {
  const { acts, checks, run } = JSON.parse(text ?? "{}");
  return JSON.stringify(run?.events.map(({ type }: { type: string }) => type) ?? [acts, checks]);
}

for (const { name, address, first, acts, codes, key } of WORKS) {
  test(`${name}: of two tabs that act in the same moment one whole work is stored, and a lost act is said`, async ({
    page,
    context,
  }) => {
    const stored = () => page.evaluate((at) => localStorage.getItem(at), key).then(happened);
    await page.goto(address);
    await press(page, first);
    const shared = await stored();
    const other = await context.newPage();
    await other.goto(address);
    await opened(other, acts[1]);

    const tabs = [page, other] as const;
    await Promise.all([press(page, acts[0]), press(other, acts[1])]);
    const told = () => Promise.all(tabs.map((tab) => elsewhere(tab).count()));
    await expect.poll(async () => Math.max(...(await told()))).toBe(1);
    const now = await stored();
    expect(now).not.toBe(shared);
    const counts = await told();
    // A tab whose act is not in what is stored says so; what is stored has the act of one tab alone.
    expect(codes.filter((code) => now.includes(code))).toHaveLength(1);
    for (const [tab, code] of codes.entries()) if (!now.includes(code)) expect(counts[tab]).toBe(1);

    // What the tab that was told goes on with is not saved: the stored work stays as it is, also when the tab is left.
    const tab = counts[0] === 1 ? page : other;
    await press(tab, counts[0] === 1 ? acts[1] : acts[0]);
    await tab.reload();
    await expect(tab.getByRole("main")).toBeVisible();
    expect(await stored()).toBe(now);
    expect(await elsewhere(tab).count()).toBe(0);
  });
}

test("handover: two tabs that begin at the same door in the same moment say so", async ({ page, context }) => {
  const { address, acts } = WORKS[3];
  const other = await context.newPage();
  for (const tab of [page, other]) {
    await tab.goto(address);
    await opened(tab, acts[0]);
  }
  await press(page, acts[0]);
  await expect(elsewhere(other)).toBeVisible();
  await press(other, acts[1]);
  await other.reload();
  await expect(page.getByTestId("run-told")).toBeAttached();
  expect(happened(await other.evaluate(() => localStorage.getItem("gatefall.handover-run")))).toBe('["ring.aligned"]');
  expect(await elsewhere(page).count()).toBe(0);
});
