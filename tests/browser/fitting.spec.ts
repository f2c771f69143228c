import { LOOKS, look, violations } from "./axe";
import { Fitter } from "./fitting";
import { expect, test } from "./page";

test("a dial fitted badly says so in its debrief; taken apart and fitted right, nothing is wrong, and it goes to the bench", async ({
  page,
}) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3&help=counts");
  const stopped = page.getByRole("region", { name: "Parts" }).getByRole("status");
  await fitter.begin();
  await fitter.does("Put it on by eye", "Tighten the ring");
  await fitter.cut("88.5");
  await fitter.does("In until it touches");
  await expect(stopped).toHaveText(/sawn end does not start/);
  await fitter.does("File and chamfer the end", "In until it touches");
  await expect(fitter.gauge("Gap between dial and ring")).toHaveText("0.00 mm");
  await fitter.toKeyway(0);
  await fitter.does("Insert the key", "Screw lightly, 0.2 Nm", "Hang the strike by one screw", "Look at the key");
  await expect(page.getByRole("region", { name: "Checks" }).getByRole("status")).toHaveText(
    /not all the way in\. Its screw turns under two fingers/,
  );
  await fitter.does("The dial is fitted: show the debrief");
  const debrief = page.getByRole("region", { name: "Debrief" });
  await expect(debrief.getByRole("heading", { name: /^Debrief/ })).toBeFocused();
  for (const fault of [
    "spindle is bent",
    "ring is off center",
    "dial rubs",
    "key is not driven home",
    "screw is loose",
    "by one screw",
    "cover is off",
  ]) {
    await expect(debrief).toContainText(fault);
  }
  await expect(debrief).toContainText("Checks you did not make");
  await expect(debrief).toContainText(/The opening index is off by .* to .* as the dial goes round/);
  await expect(debrief).not.toContainText("wherever the dial is");
  await expect(debrief).toContainText(
    /Drag: the hand gets \d\.\d graduations ahead .* where the key rides on the lever/,
  );
  await expect(debrief.getByRole("img", { name: "at each number" })).toBeVisible();
  // Zero is right at zero, and the bent spindle leaves the other half of the dial wrong.
  await expect(debrief).toContainText(/Left after zero: at 0 0\.00, at 25 [+−]\d\.\d\d, at 50 [+−]0\.[1-9]/);

  await fitter.does("Go on fitting");
  await expect(page.getByRole("heading", { name: "Parts" })).toBeFocused();
  await fitter.does("Remove the key", "Take the dial out", "Loosen the ring", "Take the ring off");
  await fitter.does("Take the spare spindle");
  await fitter.cut("88.5");
  await fitter.does("File and chamfer the end");
  await fitter.does("Put it on over the bushing", "Tighten the ring", "In until it touches");
  await fitter.fitKey();
  await fitter.does("Drop on the key's screw");
  await fitter.trueStrike();
  await fitter.does("Put the cover on", "The dial is fitted: show the debrief");
  await expect(debrief).toContainText("Nothing is wrong with this fit.");
  await expect(debrief).toContainText("wherever the dial is");
  await expect(debrief).toContainText("The changing index then reads right: the ring is centered.");
  await expect(debrief).toContainText("Left after zero: at 0 0.00, at 25 0.00, at 50 0.00, at 75 0.00.");
  await debrief.getByRole("link", { name: "Dial this lock on the bench" }).click();
  await expect(page.getByRole("slider", { name: "Dial" })).toBeVisible();
  expect(page.url()).toMatch(/profile=three-wheel.*&index=-?\d\.\d+&play=0\.25/);

  await page.goto("#/logbook?view=jobs");
  const row = page.getByRole("row", { name: /Fitting/ });
  await expect(row).toHaveCount(1);
  await expect(row).toContainText(
    /Three-wheel, counts\s*Not right\s*the ring is off center; the dial rubs on the ring; \d more/,
  );
  await row.getByRole("button", { name: /^Look at the job of/ }).press("Enter");
  const job = page.getByRole("region", { name: "Chosen job" });
  await expect(job).toContainText(/\d faults in the fit\. \d+ acts\./);
  await expect(job).toContainText("The spindle is bent. The dial runs out");
  await expect(job.getByRole("link", { name: "Fit a dial again" })).toHaveAttribute(
    "href",
    "#/fitting?profile=three-wheel&help=counts",
  );
});

test("a spindle spoiled twice cannot become a good lock, and the page says so", async ({ page }) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3&help=counts");
  await fitter.cut("60");
  await fitter.does("Take the spare spindle");
  await fitter.cut("60");
  await expect(page.getByRole("region", { name: "Checks" })).toContainText("cannot become a good lock any more");
  await expect(page.getByRole("group", { name: /^Spindle: 60\.0 mm, sawn; no spare/ })).toBeVisible();
  await expect(page.getByRole("button", { name: "Take the spare spindle" })).toHaveCount(0);
});

test("help has three levels, which the address carries: the next wise step and limits, gauges alone, or neither", async ({
  page,
}) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3");
  const next = page.getByText(/^Next: /);
  await expect(next).toHaveText(/Take the spare spindle|Choose two flat washers/);
  const limits = page.getByText("good from 0.2 to 0.9 mm");
  await expect(limits).toBeVisible();
  await fitter.does("Counts");
  await expect(next).toHaveCount(0);
  await expect(limits).toHaveCount(0);
  await expect(fitter.gauge("Gap between dial and ring")).toBeVisible();
  await expect(page).toHaveURL(/help=counts$/);
  await fitter.does("Silent");
  await expect(fitter.gauge("Gap between dial and ring")).toHaveCount(0);
  await expect(fitter.gauge("Slot of the spindle")).toBeVisible();
  await page.reload();
  await expect(page.getByRole("button", { name: "Silent" })).toHaveAttribute("aria-pressed", "true");
  await expect(fitter.gauge("Gap between dial and ring")).toHaveCount(0);
});

test("a caution stands beside the act when it comes up, at every level of help, and the hand stays at its part", async ({
  page,
}) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3&help=silent");
  const parts = page.getByRole("region", { name: "Parts" });
  const spindle = parts.getByRole("group", { name: /^Spindle/ });
  await expect(parts).toContainText("Open the door and hold it");
  await expect(spindle).toContainText("Wear eye protection");
  await fitter.begin();
  await expect(parts.getByRole("group", { name: "Lock body: all screws tight" })).toBeFocused();
  await expect(parts).not.toContainText("Open the door and hold it");
  await fitter.cut("88.5");
  await expect(spindle).toContainText("The sawn end cuts");
  await fitter.does("In until it touches");
  await expect(parts.getByRole("group", { name: /^Dial/ })).toContainText("The sawn end does not start");
  await fitter.does("File and chamfer the end", "Put it on over the bushing", "In until it touches");
  await expect(spindle).not.toContainText("Caution");
  await fitter.toKeyway(0);
  await fitter.does("Insert the key");
  await expect(parts.getByRole("group", { name: /^Key/ })).toContainText("a hard key can chip");
  await expect(page.getByRole("region", { name: "Checks" })).toContainText(
    "Prove this lock with the door open and held",
  );
  await page.goto("#/fitting?profile=dial-encoder&seed=3");
  await expect(parts.getByRole("group", { name: /^Board and battery/ })).toContainText("Wear the wrist strap");
});

test("a fitting under way goes on after a reload with what its checks showed, and starting again forgets it", async ({
  page,
}) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3");
  await fitter.begin();
  await fitter.does("Put it on by eye");
  await fitter.cut("88.5");
  await fitter.does("File and chamfer the end", "In until it touches");
  await fitter.toKeyway(0);
  await fitter.does("Insert the key", "Read at four marks of the ring", "Silent");
  const checks = page.getByRole("region", { name: "Checks" });
  const seen = await checks.getByRole("status").textContent();
  expect(seen).toMatch(/^Reads too high \(\+\) or too low \(−\): top/);
  await page.reload();
  await expect(checks.getByRole("status")).toHaveText(seen ?? "");
  await expect(page.getByRole("group", { name: "Key: in the cam" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Silent" })).toHaveAttribute("aria-pressed", "true");
  // Whoever comes back by the head is at the lock that was worked on last.
  await page.goto("#/fitting?profile=two-wheel");
  await expect(page.getByRole("group", { name: "Key: in the tray" })).toBeVisible();
  await page.goto("#/fitting");
  await expect(page.getByRole("group", { name: "Key: in the cam" })).toBeVisible();
  await fitter.does("Start again");
  await page.reload();
  await expect(page.getByRole("group", { name: "Key: in the tray" })).toBeVisible();
});

test("a ring's offset and a gap that one reckons from readings are judged by them", async ({ page }) => {
  const fitter = new Fitter(page);
  await page.goto("#/fitting?seed=3");
  await fitter.begin();
  await fitter.does("Put it on by eye");
  await fitter.cut("88.5");
  await fitter.does("File and chamfer the end", "In until it touches");
  await fitter.toKeyway(20);
  await fitter.does("Insert the key", "Read at four marks of the ring");
  const own = page.getByRole("region", { name: "Your own figures" });
  await own.getByText("How far is the ring off center?").click();
  const [from = 0, to = 0] =
    ((await own.getByRole("img", { name: /^Rule across/ }).getAttribute("aria-label")) ?? "")
      .match(/\d+(\.\d+)?(?= mm)/g)
      ?.map(Number) ?? [];
  await own.getByLabel("Radius of the marks, mm").fill(String((to - from) / 2 + 3));
  await fitter.does("Judge my radius");
  await expect(own).toContainText("Your radius does not agree");
  const radius = (to - from) / 2;
  await own.getByLabel("Radius of the marks, mm").fill(String(radius));
  await fitter.does("Judge my radius");
  await expect(own).toContainText("Your radius agrees with the rule.");
  await fitter.does("Judge my estimate");
  await expect(own).toContainText("One round of readings cannot tell");
  const read = page.getByRole("region", { name: "Checks" }).getByRole("status");
  const marks = async () => {
    const text = ((await read.textContent()) ?? "").replaceAll("−", "-");
    return [...text.matchAll(/[-+]\d+\.\d+|\b0\.00/g)].map(Number);
  };
  const first = await marks();
  await page.getByRole("button", { name: /^Read at four marks of the ring.*, made$/ }).click();
  const [top = 0, right = 0, bottom = 0, left = 0] = (await marks()).map((one, k) => (one + (first[k] ?? 0)) / 2);
  const mm = (2 * Math.PI * radius) / 100;
  await own.getByLabel(/^To the right/).fill(((mm * (top - bottom)) / 2).toFixed(2));
  await own.getByLabel(/^Up, mm/).fill(((mm * (left - right)) / 2).toFixed(2));
  await fitter.does("Judge my estimate");
  await expect(own).toContainText("Your estimate agrees with the readings.");
  await own.getByLabel(/^Up, mm/).fill("5");
  await fitter.does("Judge my estimate");
  await expect(own).toContainText("Your estimate does not agree");

  await own.getByText("Look from the side").click();
  await fitter.does("30° from the right");
  const gap = Number((await fitter.gauge("Gap between dial and ring").textContent())?.match(/[\d.]+/)?.[0]);
  const reads = Number(
    (await own.getByText(/compared with straight on/).textContent())?.match(/[+]([\d.]+) grad/)?.[1],
  );
  expect(Math.abs((reads * mm) / Math.tan(Math.PI / 6) - gap)).toBeLessThan(0.05);
  await own.getByLabel(/^The gap by your readings/).fill(gap.toFixed(2));
  await fitter.does("Judge my gap");
  await expect(own).toContainText("Your gap agrees with the readings.");
  expect(await violations(page)).toEqual([]);
});

test("a fitting that cannot be read is told of and set aside; one that another tab goes on with is not written over", async ({
  page,
  context,
}) => {
  await page.addInitScript(() => {
    localStorage.setItem("gatefall.fitting.three-wheel", "{");
  });
  await page.goto("#/fitting");
  await expect(page.getByRole("alert")).toHaveText(/cannot be read\. A copy is kept/);
  expect(await page.evaluate(() => localStorage.getItem("gatefall.fitting.three-wheel.unread"))).toBe("{");

  const one = await context.newPage();
  await one.goto("#/fitting?profile=two-wheel&seed=3");
  await new Fitter(one).does("Hang it by one screw");
  const other = await context.newPage();
  await other.goto("#/fitting?profile=two-wheel");
  await new Fitter(other).does("Tighten all screws");
  await expect(one.getByRole("alert")).toHaveText(/Another tab has gone on with a fitting/);
  await new Fitter(one).does("Take the body off");
  await other.reload();
  await expect(other.getByRole("group", { name: "Lock body: all screws tight" })).toBeVisible();
});

for (const one of LOOKS) {
  test(`axe finds nothing wrong with a fitting and its debrief, ${one.name}`, async ({ page }) => {
    const fitter = new Fitter(page);
    await look(page, one);
    await page.goto("#/fitting?seed=3&help=counts");
    await fitter.begin();
    expect(await violations(page)).toEqual([]);
    await fitter.does("Put it on by eye");
    await fitter.cut("88.5");
    await fitter.does("File and chamfer the end", "In until it touches");
    await fitter.toKeyway(0);
    await fitter.does("Insert the key", "Turn it all round", "The dial is fitted: show the debrief");
    await expect(page.getByRole("region", { name: "Debrief" })).toBeVisible();
    expect(await violations(page)).toEqual([]);
  });
}

for (const [place, profile] of [
  ["bench", "three-wheel"],
  ["zeroing", "dial-encoder"],
] as const) {
  test(`a lock that comes from its fitting says so, and leads back: ${place}`, async ({ page }) => {
    await page.goto(`#/${place}?profile=${profile}&index=0.4&from=fitting`);
    await expect(page.getByText("This is the lock you fitted.")).toBeVisible();
    await expect(page.getByText("is not a setting")).toHaveCount(0);
    await page.getByRole("link", { name: "Back to the fit" }).click();
    await expect(page).toHaveURL(new RegExp(`#/fitting\\?profile=${profile}$`));
    await page.goto(`#/${place}?profile=${profile}&index=0.4`);
    await expect(page.getByRole("slider", { name: "Dial" }).first()).toBeVisible();
    await expect(page.getByText("This is the lock you fitted.")).toHaveCount(0);
  });
}
