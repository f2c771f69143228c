import { sayNext, TASK_WORDS, TOLD } from "../../../src/app/exercises/handover/holdback/holdbackWords";
import {
  HOLDBACK_TASKS,
  type HoldbackContext,
  type HoldbackEvent,
  holdbackMachine,
  nextTask,
} from "../../../src/handover/holdback/holdbackMachine";
import { opposite, signOf } from "../../../src/lock/dial";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";
import { Bench } from "../bench";
import { KeyHand } from "../hands";
import { expect, test } from "../page";
import { type ChartStep, pagePaths, wayTo } from "./chartPaths";

type Step = ChartStep<HoldbackEvent, HoldbackContext>;

/** Part of what shows that a held dial cannot be spun off: twice is enough. */
const PUSH = 60;
const EVENTS: readonly HoldbackEvent[] = [
  { type: "holdback.set" },
  { type: "holdback.released" },
  { type: "holdback.refused", why: "bolt-not-back" },
  { type: "dial.held", by: PUSH },
  { type: "lock.cleared" },
  { type: "door.pulled", isLocked: true },
  { type: "door.pulled", isLocked: false },
];

/** What a lock can do where it is: held it is not locked, and spun off its bolt is out until it is dialed again. */
const canBe = (event: HoldbackEvent, { value }: Step["from"]) => {
  if (event.type === "door.pulled") return event.isLocked ? value !== "held" : value !== "spunOff";
  if (event.type === "holdback.refused") return value !== "held";
  return event.type !== "holdback.set" || value === "standing" || value === "released";
};

class Hand {
  readonly bench: Bench;
  private readonly keys: KeyHand;
  private readonly profile: (typeof SHIPPED_PROFILES)[number];

  constructor(bench: Bench, profile: (typeof SHIPPED_PROFILES)[number]) {
    this.bench = bench;
    this.profile = profile;
    this.keys = new KeyHand(bench, profile.graduations);
  }

  async make({ event, from }: Step): Promise<void> {
    const { travel } = this.profile.draw;
    // A bolt that was thrown by a few graduations is drawn back, as the wheels are still in line.
    const isHere = from.value === "spunOff";
    switch (event.type) {
      case "holdback.set":
        return this.press(TASK_WORDS.set);
      case "holdback.released":
        return this.press(TASK_WORDS.released);
      case "dial.held":
        return this.turnBack(PUSH);
      case "lock.cleared":
        return this.turnBack(5 * this.profile.graduations);
      case "holdback.refused":
        return this.whileAway(isHere ? 0 : travel / 2, TASK_WORDS.set);
      case "door.pulled":
        return this.whileAway(event.isLocked && !isHere ? travel + 2 : 0, TASK_WORDS.pulled);
    }
  }

  private turnBack(by: number): Promise<void> {
    return this.keys.turnBy(by * signOf(opposite(this.profile.draw.turn)));
  }

  /** Presses a button while the dial stands so far off its stop. */
  private async whileAway(by: number, name: string): Promise<void> {
    if (by > 0) await this.turnBack(by);
    await this.press(name);
    if (by > 0) await this.turnBack(-by - 1);
  }

  private press(name: string): Promise<void> {
    return this.bench.button(name).press("Enter");
  }
}

for (const profile of SHIPPED_PROFILES.filter(({ id }) => id === "three-wheel" || id === "dial-encoder")) {
  const paths = pagePaths(
    holdbackMachine(profile.graduations),
    EVENTS,
    (event: HoldbackEvent, { context }: Step["to"]) => `${event.type} told ${context.told}`,
    canBe,
  );

  test(`the page of the ${profile.id} lock is asked for every state of a holdback, and every event in it`, () => {
    const steps = paths.flat();
    const arrows = new Set(steps.map(({ arrow }) => arrow));
    process.stdout.write(`holdback on the page: ${arrows.size} arrows, ${paths.length} paths, ${steps.length} steps\n`);
    expect([...new Set(steps.flatMap(({ from, to }) => [from.value, to.value]))].sort()).toEqual(
      Object.keys(holdbackMachine(100).states).sort(),
    );
    expect(new Set(steps.map(({ event }) => JSON.stringify(event))).size).toBe(EVENTS.length);
  });

  for (const [k, path] of paths.entries()) {
    test(`the ${profile.id} lock: the page shows the chart's state at every step of path ${k + 1}`, async ({
      page,
    }) => {
      const bench = new Bench(page);
      await page.goto(`#/handover?view=holdback&seed=5&profile=${profile.id}`);
      await bench.dial.waitFor();
      const hand = new Hand(bench, profile);
      const tasks = page.getByRole("list", { name: "What to show" }).getByRole("listitem");
      for (const [i, step] of path.entries()) {
        await hand.make(step);
        const { context } = step.to;
        const seen = async () => ({
          told: await page.getByTestId("holdback-told").textContent(),
          say: await bench.say.textContent(),
          done: (await tasks.allTextContents()).map((text) => text.endsWith(", done")),
        });
        await expect
          .poll(seen, {
            message: wayTo(path, i),
            timeout: 3000,
          })
          .toEqual({
            told: context.told === null ? "" : TOLD[context.told],
            say: sayNext(nextTask(context), profile),
            done: HOLDBACK_TASKS.map((task) => context.done.includes(task)),
          });
      }
    });
  }
}
