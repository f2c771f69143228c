import type { Locator, Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import { signOf, type Turn } from "../../src/lock/dial";
import type { Refusal } from "../../src/zeroing/approach";
import { Fingers, type Hand, mouse, type Pointer, RoundHand } from "./hands";
import { expect, test } from "./page";
import { LOCK, PER_TURN, placeOfWords, REST, Zeroing, ZeroingHand } from "./zeroing";

/** A signed figure as the page shows it. */
const signed = (text = "") => Number(text.replace("−", "-"));

const SIDES = [
  { side: "right", name: "Right" },
  { side: "left", name: "Left" },
] as const;
const COUNTS = ["one", "two", "three"];

/** How a person does the exercise. */
interface Way {
  readonly hand: Hand;
  /** Brings the ring true. */
  readonly straighten: () => Promise<void>;
  readonly press: (name: RegExp) => Promise<void>;
  /** After the last motion: lets go of the dial, lets it rest, and takes the reading. */
  readonly read: () => Promise<void>;
  readonly letGo: () => Promise<void>;
  /** How far stops of this hand may be off, graduations. */
  readonly within: number;
}

/** Three readings of a side, each with its words, its socket and its count. */
async function takeSeries(zeroing: Zeroing, way: Way, index: 0 | 1): Promise<void> {
  const { side, name } = SIDES[index];
  await expect(zeroing.state).toContainText(`urn ${side} only, onto zero.`);
  for (const [k, count] of COUNTS.entries()) {
    await zeroing.turnOnto(way.hand, side, 0);
    const spoken = await zeroing.deviation();
    await way.read();
    await expect(zeroing.last).toHaveText(
      new RegExp(`^${name} stop ${count} of three recorded, (on zero|(less than )?0\\.\\d+ (left|right) of zero)\\.$`),
    );
    const told = placeOfWords((await zeroing.last.textContent()) ?? "");
    expect(Math.abs(told - spoken)).toBeLessThanOrEqual(0.101);
    expect(Math.abs(told)).toBeLessThanOrEqual(way.within);
    await expect(zeroing.steps.nth(index + 1)).toContainText(`${k + 1} of 3 stops`);
    await expect(zeroing.page.locator(".socket-peg")).toHaveCount(3 * index + k + 1);
  }
}

/** Ring, both series, the result, the proof, and back. */
async function doExercise(zeroing: Zeroing, way: Way): Promise<void> {
  const { page } = zeroing;
  await expect(zeroing.state).toHaveText("Turn the ring until its index is under the line, then clamp it.");
  await expect(page.getByRole("tab", { name: "Prove it" })).toBeDisabled();
  await expect(zeroing.readingButton).toBeHidden();
  await way.straighten();
  await way.press(/^Clamp the ring$/);
  await expect(zeroing.steps.first()).toContainText("clamped");

  await takeSeries(zeroing, way, 0);
  await expect(page.locator(".sockets-bar")).toHaveCount(1);
  await takeSeries(zeroing, way, 1);
  await expect(page.locator(".sockets-bar")).toHaveCount(2);

  await expect(zeroing.state).toHaveText("The zero is set in both directions. Prove it.");
  await expect(zeroing.headline).toHaveText(/shown to be good|not shown to be good yet/);
  for (const { name } of SIDES)
    await expect(zeroing.panel).toContainText(new RegExp(`${name}: (accepted|not shown yet)`));
  const text = (await zeroing.panel.textContent()) ?? "";
  const [, estimate, truth] = /Lost motion: (-?[\d.]+) graduations.*this lock has ([\d.]+)\./.exec(text) ?? [];
  expect(Math.abs(Number(estimate) - Number(truth))).toBeLessThanOrEqual(0.15 + way.within);
  const [, index, indexTruth] =
    /Index: ([+−][\d.]+) graduations off its true place.*its true error is ([+−][\d.]+)\./.exec(text) ?? [];
  expect(Math.abs(signed(index) - signed(indexTruth))).toBeLessThanOrEqual(0.15);
  await expect(zeroing.panel).toContainText(/\d+ seconds, \d+\.\d turns/);

  await way.press(/^Prove it$/);
  await expect(zeroing.headline).toHaveText("Dial the combination on the lock you have just zeroed.");
  let held: Awaited<ReturnType<Locator["boundingBox"]>> = null;
  const path = idealMotion(LOCK, LOCK.asSet ?? [], await zeroing.seen(), [], 10);
  for (const [i, position] of path.slice(1).entries()) {
    await way.hand.turnBy(position - (path[i] ?? 0));
    held ??= await zeroing.dial.boundingBox();
    expect(await zeroing.dial.boundingBox(), "the dial stays where it is held").toEqual(held);
  }
  await way.letGo();
  const proof = page.getByRole("region", { name: "Prove it" });
  await expect(zeroing.headline).toHaveText("Opened: the zero you set holds.");
  await expect(proof.getByRole("link", { name: "hand such a lock over" })).toBeVisible();
  await expect(zeroing.page.locator(".dial-open-ring")).toHaveCount(1);
  await expect(proof.locator("tbody tr")).toHaveCount(3);
  for (const [k, number] of (LOCK.asSet ?? []).entries()) {
    const row = proof.locator("tbody tr").nth(k);
    await expect(row.getByRole("rowheader")).toHaveText(String(number));
    await expect(row).toContainText("inside the tolerance");
    // What the lock saw is what came from the zero and what came from the hand, each rounded by itself.
    const [total = 0, fromZero = 0, fromHand = 0] = (await row.getByRole("cell").allInnerTexts()).map((cell) =>
      Number(cell.replace("−", "-")),
    );
    expect(Math.abs(total - fromZero - fromHand)).toBeLessThanOrEqual(0.151);
  }

  await way.press(/^Set zero$/);
  await expect(zeroing.state).toHaveText("The zero is set in both directions. Prove it.");
  await expect(zeroing.panel).toContainText("this lock has");
}

/** A way with a pointer: the ring's slider pressed where its index is true, nudged, and everything else pressed. */
function pointerWay(zeroing: Zeroing, pointer: Pointer, press: (name: RegExp) => Promise<void>): Way {
  const hand = new RoundHand(zeroing.bench, pointer, PER_TURN);
  // The dial rests in the hand. A finger lifted while it moves would throw, and the browser takes the next tap to stop that.
  const restAndLetGo = async () => {
    await zeroing.page.waitForTimeout(REST);
    await hand.letGo();
  };
  return {
    hand,
    straighten: async () => {
      const box = await zeroing.ring.boundingBox();
      if (box === null) throw new Error("the ring's slider is not on the screen");
      // From the middle of the slider to where the index stands true; ten graduations on the slider's length.
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const reach = ((await zeroing.indexError()) / 10) * (box.width - 16);
      await pointer.down(x, y);
      // Beyond and back: the first pixels of a finger's way are not yet a drag.
      await pointer.move(x + 40 * Math.sign(reach), y);
      await pointer.move(x + reach, y);
      await pointer.up();
      await expect.poll(async () => Math.abs(await zeroing.indexError())).toBeLessThan(0.5);
      for (let i = 0; i < 12; i++) {
        const off = await zeroing.indexError();
        if (Math.abs(off) < 0.05) break;
        await press(off > 0 ? /^Nudge the ring right$/ : /^Nudge the ring left$/);
      }
      expect(Math.abs(await zeroing.indexError())).toBeLessThan(0.05);
    },
    press,
    read: async () => {
      await restAndLetGo();
      await press(/^Record this stop/);
    },
    letGo: restAndLetGo,
    within: 0.4,
  };
}

const toPress = (page: Page, name: RegExp) =>
  page.getByRole("button", { name }).or(page.getByRole("tab", { name })).first();

test.describe("the whole exercise: ring, both sides, the result, the proof and back", () => {
  test("is done by keyboard", async ({ page }) => {
    await page.clock.install();
    const zeroing = new Zeroing(page);
    await zeroing.open();
    const hand = new ZeroingHand(zeroing);
    await doExercise(zeroing, {
      hand: hand.keys,
      straighten: () => zeroing.straighten(),
      press: (name) => toPress(page, name).press("Enter"),
      read: () => hand.read(),
      letGo: async () => {},
      within: 0.1,
    });
  });

  test("is done by mouse", { tag: "@long" }, async ({ page }) => {
    const zeroing = new Zeroing(page);
    await zeroing.open();
    await doExercise(
      zeroing,
      pointerWay(zeroing, mouse(page), (name) => toPress(page, name).click()),
    );
  });

  test.describe("on a phone", () => {
    test.use({ hasTouch: true, viewport: { width: 390, height: 844 } });

    test("is done by touch", { tag: "@long" }, async ({ page, context }) => {
      const zeroing = new Zeroing(page);
      await zeroing.open();
      const finger = new Fingers(await context.newCDPSession(page)).finger(1);
      const way = pointerWay(zeroing, finger, (name) => toPress(page, name).tap());
      await doExercise(zeroing, {
        ...way,
        straighten: async () => {
          await zeroing.ring.scrollIntoViewIfNeeded();
          await way.straighten();
        },
        hand: {
          turnBy: async (by) => {
            await zeroing.dial.scrollIntoViewIfNeeded();
            await way.hand.turnBy(by);
          },
        },
      });
    });
  });
});

/** What is said of each refused reading, with the right side asked for and then the left. */
const SENTENCES: readonly { readonly reason: Refusal; readonly says: (asked: Turn, other: Turn) => RegExp }[] = [
  {
    reason: "not-at-rest",
    says: () => /^Not counted\. The dial was still moving: make another turn, and let the dial rest for 0\.4 s\.$/,
  },
  {
    reason: "same-stop",
    says: (asked) => new RegExp(`^Not counted\\. This stop is already recorded: turn ${asked} once more to zero\\.$`),
  },
  {
    reason: "wrong-way",
    says: (asked, other) =>
      new RegExp(`^Not counted\\. You came to zero turning ${other}: come to it turning ${asked}\\.$`),
  },
  {
    reason: "came-back",
    says: (asked) =>
      new RegExp(
        `^Not counted\\. You turned back before zero: go round again, turning ${asked} only for the last 25 graduations\\.$`,
      ),
  },
  {
    reason: "too-short",
    says: (asked) =>
      new RegExp(`^Not counted\\. Your turn ${asked} was too short: start at least 25 graduations before zero\\.$`),
  },
  {
    reason: "off-the-mark",
    says: (asked) =>
      new RegExp(
        `^Not counted\\. You stopped (2\\.9|3\\.0|3\\.1) left of zero, but only stops within 1\\.5 graduations count: go round again, turning ${asked}\\.$`,
      ),
  },
];

test.describe("a refused reading", () => {
  for (const { reason, says } of SENTENCES) {
    const tag = reason === "wrong-way" ? [] : ["@long"];
    test(`says why and costs only another turn: ${reason}`, { tag }, async ({ page }) => {
      await page.clock.install();
      const zeroing = new Zeroing(page);
      await zeroing.open();
      const hand = new ZeroingHand(zeroing);
      await hand.clamp();
      for (const [index, { side, name }] of SIDES.entries()) {
        const other = index === 0 ? "left" : "right";
        await hand.take(side, 0);
        await expect(zeroing.last).toHaveText(new RegExp(`^${name} stop one of three recorded`));

        await hand.miss(reason, side);
        await expect(zeroing.last).toHaveText(says(side, other));
        await expect(zeroing.steps.nth(index + 1)).toContainText("1 of 3 stops");
        await expect(zeroing.panel).toContainText("Not counted so far: 1");
        await expect(page.locator(".socket-refused")).toHaveCount(1);

        await hand.take(side, 0);
        await expect(zeroing.last).toHaveText(new RegExp(`^${name} stop two of three recorded`));
        await expect(page.locator(".socket-refused")).toHaveCount(0);
        await expect(zeroing.panel).toContainText("Not counted so far: 1");
        await hand.take(side, 0);
      }
      await expect(zeroing.state).toHaveText("The zero is set in both directions. Prove it.");
    });
  }
});

test.describe("find the play", () => {
  test("takes two stops a side on the cam's mark, and marks a number", async ({ page }) => {
    await page.clock.install();
    const zeroing = new Zeroing(page);
    await zeroing.open();
    const hand = new ZeroingHand(zeroing);
    await page.getByRole("tab", { name: "Find the play" }).click();
    const keep = page.getByRole("button", { name: /^Record this stop/ });
    const panel = page.getByRole("region", { name: "Find the play" });
    const mark = zeroing.button("Check my answer");
    await expect(keep).toBeDisabled();
    await expect(zeroing.bench.detail).toHaveText(/the cam's mark is/);

    const kept = async (side: Turn, how: "button" | "space") => {
      await hand.turnOntoMark(side);
      // A little farther the second time: stops that differ leave an interval.
      if (how === "space") await hand.keys.turnBy(0.1 * signOf(side));
      const stop = await zeroing.deviation();
      await (how === "button" ? keep.click() : zeroing.dial.press(" "));
      const row = panel.getByRole("row", { name: new RegExp(`^${side}`) });
      await expect(row).toContainText(how === "button" ? /\d\.\d$/ : /\d\.\d, \d+\.\d$/);
      return stop;
    };
    const right = (await kept("right", "button")) + (await kept("right", "space"));
    const left = (await kept("left", "button")) + (await kept("left", "space"));
    const play = ((left - right) / 2).toFixed(2);

    await page.getByLabel("The play is").fill("much");
    await expect(mark).toBeDisabled();
    await page.getByLabel("The play is").fill(play);
    await mark.click();
    await expect(zeroing.headline).toHaveText(
      /^You entered [\d.]+ graduations?; the play is [\d.]+: (exactly right|(less than )?0\.\d+ too (much|little))\. By your stops it is -?[\d.]+ to [\d.]+, and the true play is in that range\.$/,
    );
    const [, truth] = /the play is ([\d.]+):/.exec((await zeroing.headline.textContent()) ?? "") ?? [];
    expect(Math.abs(Number(play) - Number(truth))).toBeLessThanOrEqual(0.25);
    await expect(keep).toBeDisabled();

    await zeroing.dial.press("r");
    await expect(panel.getByRole("row", { name: /^right/ })).toContainText("–");
    await expect(mark).toBeVisible();
  });

  test("says so when a number is not what the stops say", async ({ page }) => {
    await page.clock.install();
    const zeroing = new Zeroing(page);
    await zeroing.open();
    const hand = new ZeroingHand(zeroing);
    await page.getByRole("tab", { name: "Find the play" }).press("Enter");
    for (const side of ["right", "right", "left", "left"] as const) {
      await hand.turnOntoMark(side);
      await zeroing.dial.press(" ");
    }
    await page.getByLabel("The play is").fill("4,5");
    await page.keyboard.press("Enter");
    await expect(zeroing.headline).toHaveText(
      /^You entered 4\.5 graduations; the play is [\d.]+: [\d.]+ too much\..* Your answer is outside that range/,
    );
  });
});

test("silent help shows no loupe and no digital reading, and the exercise works", async ({ page }) => {
  await page.clock.install();
  const zeroing = new Zeroing(page);
  await zeroing.open();
  await expect(page.locator(".hand-loupe")).toHaveCount(1);
  await expect(page.locator(".dial-note")).toHaveText(/off zero$/);

  await zeroing.open({ help: "silent" });
  const hand = new ZeroingHand(zeroing);
  const nothingShown = async () => {
    await expect(page.locator(".hand-loupe, .dial-note, .dial-reading, .magnifier")).toHaveCount(0);
  };
  await nothingShown();
  await hand.clamp();
  await hand.takeAll("right", [0.1, -0.1, 0.1]);
  await nothingShown();
  await hand.takeAll("left", [0.1, -0.1, 0.1]);
  await expect(zeroing.state).toHaveText("The zero is set in both directions. Prove it.");
  await page.getByRole("tab", { name: "Prove it" }).click();
  await nothingShown();
  const path = idealMotion(LOCK, LOCK.asSet ?? [], await zeroing.seen(), [], 10);
  for (const [i, position] of path.slice(1).entries()) await hand.keys.turnBy(position - (path[i] ?? 0));
  await expect(zeroing.headline).toHaveText("Opened: the zero you set holds.");
});

for (const [index, { side }] of SIDES.entries()) {
  test(`readings from the ${side} that never agree end as not set, with the reason, and one can begin again`, {
    tag: "@long",
  }, async ({ page }) => {
    await page.clock.install();
    const zeroing = new Zeroing(page);
    await zeroing.open();
    const hand = new ZeroingHand(zeroing);
    await hand.clamp();
    if (side === "left") await hand.takeAll("right", [0, 0, 0]);
    await hand.takeAll(side, [1.2, -1.2, 1.2]);
    await expect(zeroing.last).toHaveText(/stop three of three recorded, 1\.\d left of zero/);
    await hand.take(side, -1.2);
    await expect(zeroing.last).toHaveText(/extra stop four recorded, 1\.\d right of zero/);
    await hand.takeAll(side, [1.2, -1.2, 1.2, -1.2]);
    await expect(zeroing.state).toHaveText("The zero is not set.");
    await expect(zeroing.headline).toHaveText(
      new RegExp(
        `^Not set: after eight stops turning ${side}, the last three still lie 2\\.4 graduations apart; 0\\.6 is allowed\\. Start again, and come to zero more slowly\\.$`,
      ),
    );
    await expect(zeroing.readingButton).toBeDisabled();
    await expect(page.getByRole("tab", { name: "Prove it" })).toBeDisabled();
    await expect(zeroing.steps.nth(index + 1)).toContainText("8 stops");

    await zeroing.button("Start again").click();
    await expect(zeroing.state).toHaveText("Turn the ring until its index is under the line, then clamp it.");
    await hand.clamp();
    await hand.takeAll("right", [0, 0, 0]);
    await hand.takeAll("left", [0, 0, 0]);
    await expect(zeroing.state).toHaveText("The zero is set in both directions. Prove it.");
  });
}

test("a side that is not shown yet to be good is reopened for one more reading", async ({ page }) => {
  await page.clock.install();
  const zeroing = new Zeroing(page);
  await zeroing.open();
  const hand = new ZeroingHand(zeroing);
  await hand.clamp();
  await hand.takeAll("right", [0.3, -0.2, 0.2]);
  await hand.takeAll("left", [0.3, -0.2, 0.2]);
  await expect(zeroing.headline).toHaveText("Set, but not shown to be good yet.");
  for (const [index, { side, name }] of SIDES.entries()) {
    await zeroing.button(`One more stop ${side}`).click();
    await expect(zeroing.steps.nth(index + 1)).toHaveAttribute("aria-current", "step");
    await expect(zeroing.steps.nth(index + 1)).toContainText("3 of 4 stops");
    await expect(page.getByRole("tab", { name: "Prove it" })).toBeDisabled();
    await hand.take(side, 0);
    await expect(zeroing.last).toHaveText(new RegExp(`^${name} extra stop four recorded`));
    await expect(zeroing.state).toHaveText("The zero is set in both directions. Prove it.");
    await expect(zeroing.steps.nth(index + 1)).toContainText("4 of 4 stops");
  }
});
