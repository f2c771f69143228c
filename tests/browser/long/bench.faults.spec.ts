import { idealMotion } from "../../../src/dialing/idealMotion";
import type { Graduations } from "../../../src/lock/dial";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import type { Bench, BenchAsked } from "../bench";
import { KeyHand } from "../hands";
import { expect, test } from "../page";

const NUMBERS = [38, 71, 26];
const PUSH = 10;

/** Where a perfect hand stops at 38-71-26 on a lock, and what makes its last push. */
interface Dialer {
  readonly hand: KeyHand;
  /** Unwrapped stops at each number and the end of the draw. */
  readonly stops: readonly Graduations[];
  /** Turns to an unwrapped position. */
  to(position: Graduations): Promise<void>;
}

/** Opens a bench at 38-71-26 and takes hold of its dial. */
async function takeHold(bench: Bench, asked: BenchAsked & { readonly profile: string }): Promise<Dialer> {
  await bench.open({ combination: NUMBERS.join("-"), ...asked });
  const profile = shippedProfile(asked.profile);
  const start = await bench.reading();
  const hand = new KeyHand(bench, profile.graduations);
  let at = start;
  return {
    hand,
    stops: idealMotion(profile, NUMBERS, start, [], PUSH).slice(1),
    to: async (position) => {
      await hand.turnBy(position - at);
      at = position;
    },
  };
}

/** Turns to each position in order. */
async function through(dialer: Dialer, positions: readonly (Graduations | undefined)[]): Promise<void> {
  for (const position of positions) if (position !== undefined) await dialer.to(position);
}

test.describe("a fault on a wheel pack", () => {
  test("running past the second number names the wheel, how far it is off, and that one must start over", async ({
    bench,
  }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel" });
    const [first = 0, second = 0, third = 0, end] = dialer.stops;
    await through(dialer, [first, second - 3]);
    await expect(bench.say).toHaveText("3.0 past 71. Start over: turn left, at least four arrivals at 38.");
    await expect(bench.detail).toHaveText("wheel 2 is now 3.0 graduations off its gate");
    await expect(bench.state).toHaveText("Past 71. Start over: turn left, at least four arrivals at 38.");
    await through(dialer, [third]);
    await expect(bench.fault).toHaveText(
      "You ran 3.0 graduations past 71. Wheel 2 is 3.0 graduations off its gate. Going round again does not fix it. Start over: left again, at least four arrivals.",
    );
    await through(dialer, [end]);
    await expect(bench.state).toHaveText(/^Did not open, after \d+\.\d s\.$/);
    await expect(bench.steps.last()).toContainText("bolt stays");
    await expect(bench.result.getByRole("listitem")).toHaveCount(1);
    await expect(bench.result).toContainText("Slow down over the last ten graduations before 71.");
    await expect(bench.result.getByRole("row", { name: /^71 / })).toContainText("+3.0 past");
  });

  test("a fourth arrival at the second number carries wheel 1 along, and the page says so", async ({ bench }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel" });
    const [first = 0, second = 0] = dialer.stops;
    await through(dialer, [first, second - 100]);
    const told = "Fourth arrival at 71: it carried wheel 1 along. Start over: turn left, at least four arrivals at 38.";
    await expect(bench.say).toHaveText(told);
    await expect(bench.state).toHaveText(told);
    await through(dialer, [second - 60]);
    await expect(bench.fault).toHaveText(
      /^You arrived four times at 71, where this lock asks for exactly three\. Wheel 1 was carried along and is \d+\.\d graduations off its gate\..* Start over: left again, at least four arrivals\.$/,
    );
  });

  test("stopping short is told with its size, and the draw is refused", async ({ bench }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel" });
    const [first = 0, second = 0, third = 0, end = 0] = dialer.stops;
    await through(dialer, [first, second, third - 2.5, end]);
    await expect(bench.state).toHaveText(/^Did not open/);
    await expect(bench.fault).toContainText("You stopped 2.5 graduations short of 26.");
    await expect(bench.fault).toContainText("Wheel 3 is 2.5 graduations off its gate.");
    await expect(bench.result).toContainText("Let the last graduation before 26 come all the way to the index.");
  });

  test("a first turn the wrong way is told at once, and a long one is the one fault of the attempt", async ({
    bench,
  }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel" });
    await dialer.hand.turnBy(-5);
    await expect(bench.state).toHaveText("Other way: turn left, at least four arrivals at 38.");
    await expect(bench.fault).toContainText("You turned right first; this lock begins to the left.");
    await dialer.hand.turnBy(-355);
    await dialer.hand.turnBy(100);
    await expect(bench.state).toHaveText(/^Keep turning left\. Pass 38/);
  });

  test("coming back onto a number that was run past is told for what it is", async ({ bench, page }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel" });
    const [first = 0, second = 0, third = 0] = dialer.stops;
    await through(dialer, [first, second - 4, second]);
    // The rest itself is the fault: 300 ms, and the page looks every 200.
    await page.waitForTimeout(700);
    await through(dialer, [third]);
    await expect(bench.fault).toContainText(
      "You ran 4.0 graduations past 71 and came back onto it. Coming back does not bring wheel 2 back.",
    );
    await expect(bench.fault).toContainText("Wheel 2 is 4.0 graduations off its gate.");
  });
});

test.describe("a draw on a wheel pack", () => {
  test("that turns back with the nose in the cam, and then goes on, opens, and the page says that it opened", async ({
    bench,
  }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel" });
    const [first = 0, second = 0, third = 0, end = 0] = dialer.stops;
    await through(dialer, [first, second, third, third - 30, third - 25]);
    await expect(bench.steps.last()).not.toContainText("bolt back");
    await through(dialer, [end]);
    await expect(bench.steps.last()).toContainText("bolt back");
    await expect(bench.say).toHaveText("Open. Turn left to throw the bolt, then spin off.");
    await expect(bench.state).toHaveText(/^Opened in \d+\.\d s\.$/);
    await expect(bench.result).toContainText(/Opened in/);
  });
});

test.describe("the same on an encoder lock", () => {
  test("a fourth arrival at the second number is no fault: it opens", async ({ bench }) => {
    const dialer = await takeHold(bench, { profile: "dial-encoder" });
    const [first = 0, second = 0, third = 0, end = 0] = dialer.stops;
    await through(dialer, [first, second - 3]);
    await expect(bench.say).toHaveText("3.0 past 71. Do not come back: go round again, right.");
    await expect(bench.detail).toHaveText("the fourth arrival at 71 is as good");
    await through(dialer, [second - 100, third, end]);
    await expect(bench.state).toHaveText(/^Opened in/);
    await expect(bench.fault).toBeEmpty();
    await expect(bench.result.getByRole("row", { name: /^71 / })).toContainText("4 of 3 or more");
  });

  test("resting longer than the lock waits makes it forget, also with the hands off", async ({ bench, page }) => {
    await page.clock.install();
    const dialer = await takeHold(bench, { profile: "dial-encoder" });
    const [first = 0, second = 0] = dialer.stops;
    await through(dialer, [first, second]);
    await page.clock.runFor(29_000);
    await expect(bench.state).toHaveText("Stop here. Now turn left to 26.");
    await page.clock.runFor(2_000);
    await expect(bench.state).toHaveText(/^Did not open/);
    await expect(bench.fault).toContainText(
      "You rested at 71 for longer than the 30 seconds this lock waits. It forgot what was dialed.",
    );
    await expect(bench.result).toContainText("Know the next number before you stop on this one.");
  });

  test("three wrong tries make it refuse every try for a minute, and then it opens again", async ({ bench, page }) => {
    await page.clock.install();
    const dialer = await takeHold(bench, { profile: "dial-encoder" });
    const miss = async (hand: KeyHand) => {
      const stops = idealMotion(shippedProfile("dial-encoder"), NUMBERS, await bench.reading(), [0, 0, 5], PUSH);
      for (const [i, position] of stops.slice(1).entries()) await hand.turnBy(position - (stops[i] ?? 0));
      await expect(bench.state).toHaveText(/^Did not open/);
    };
    for (let tries = 1; tries <= 3; tries++) {
      await expect(bench.say).not.toContainText("delay");
      await miss(dialer.hand);
      if (tries < 3) await page.keyboard.press("r");
    }
    await expect(bench.say).toHaveText(/^It did not open\. Wrong-try delay: (60|59) s left\.$/);
    await page.clock.runFor(30_000);
    await expect(bench.say).toHaveText(/^It did not open\. Wrong-try delay: (30|29|28) s left\.$/);
    await page.keyboard.press("r");
    await expect(bench.say).toContainText("Wrong-try delay");
    await page.clock.runFor(31_000);
    await expect(bench.say).not.toContainText("delay");
    const path = idealMotion(shippedProfile("dial-encoder"), NUMBERS, await bench.reading(), [], PUSH);
    for (const [i, position] of path.slice(1).entries()) await dialer.hand.turnBy(position - (path[i] ?? 0));
    await expect(bench.state).toHaveText(/^Opened in/);
  });

  test("a right try while it waits is refused too", async ({ bench, page }) => {
    await page.clock.install();
    const dialer = await takeHold(bench, { profile: "dial-encoder" });
    const dial = async (last: number) => {
      const path = idealMotion(shippedProfile("dial-encoder"), NUMBERS, await bench.reading(), [0, 0, last], PUSH);
      for (const [i, position] of path.slice(1).entries()) await dialer.hand.turnBy(position - (path[i] ?? 0));
    };
    for (let tries = 0; tries < 3; tries++) {
      await dial(5);
      await page.keyboard.press("r");
    }
    await dial(0);
    await expect(bench.state).toHaveText(/^Did not open/);
    await expect(bench.say).toContainText("Wrong-try delay");
  });
});

test.describe("help", () => {
  test("silent tells nothing and hides the inside until the attempt has ended, then shows it all", async ({
    bench,
    page,
  }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel", help: "silent" });
    const [first = 0, second = 0, third = 0, end = 0] = dialer.stops;
    const expectSilence = async () => {
      await expect(bench.state).toBeEmpty();
      await expect(bench.fault).toBeEmpty();
      await expect(bench.say).toBeEmpty();
      await expect(bench.detail).toBeEmpty();
      await expect(page.getByRole("region", { name: "Silent" })).toBeVisible();
      for (const hidden of [bench.cutaway, bench.chart, bench.result]) await expect(hidden).toHaveCount(0);
      await expect(page.locator(".strip [aria-current]")).toHaveCount(0);
      await expect(bench.steps.first().locator(".pip")).toHaveCount(0);
      await expect(bench.dial).not.toHaveAttribute("aria-valuetext", /arrival/);
      await expect(bench.dial.locator(".dial-reading, .dial-arrow")).toHaveCount(0);
    };
    await expectSilence();
    await through(dialer, [first, second - 3]);
    await expectSilence();
    await through(dialer, [third]);
    await expectSilence();
    await through(dialer, [end]);
    await expect(bench.state).toHaveText(/^Did not open, after/);
    await expect(bench.fault).toContainText("You ran 3.0 graduations past 71.");
    await expect(bench.result).toBeVisible();
    await expect(bench.chart).toBeVisible();
    await expect(bench.cutaway).toBeVisible();
  });

  test("counts tells arrivals and no distances beside the dial", async ({ bench, page }) => {
    const dialer = await takeHold(bench, { profile: "three-wheel", help: "counts" });
    const [first = 0, second = 0] = dialer.stops;
    const expectNoDistance = async () => {
      await expect(bench.detail).toBeEmpty();
      await expect(bench.say).not.toContainText(/\d\.\d|to go/);
      await expect(page.locator(".strip")).not.toContainText(/[+−]?\d\.\d/);
      await expect(bench.dial.locator(".dial-reading, .dial-arrow")).toHaveCount(0);
    };
    await through(dialer, [first - 150]);
    await expect(bench.say).toHaveText("Two of four at number 1.");
    await expect(bench.state).toHaveText("turning to number 1");
    await expectNoDistance();
    await through(dialer, [first]);
    await expect(bench.say).toHaveText("Four of four at number 1.");
    await expect(bench.steps.first().locator(".pip-made")).toHaveCount(4);
    await expectNoDistance();
    await through(dialer, [second - 3]);
    await expect(bench.say).toHaveText("Three of three at number 2.");
    await expect(bench.state).toHaveText("past number 2");
    await expectNoDistance();
  });
});
