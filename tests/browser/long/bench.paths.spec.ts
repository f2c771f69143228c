import type { Page } from "@playwright/test";
import { Attempt } from "../../../src/dialing/attempt";
import type { AttemptStart } from "../../../src/dialing/attemptStart";
import { type DialingState, dialingMachine } from "../../../src/dialing/dialingMachine";
import type { Profile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { COMBINATION } from "../../support/faultTraces";
import { type ChartState, planMotion } from "../../support/handPlanner";
import type { Bench } from "../bench";
import { KeyHand } from "../hands";
import { expect, test } from "../page";
import { arrowsOf, dialingPaths, type PathStep } from "./dialingPaths";

/** Paths driven in one test. */
const BATCH = 15;

/** Addresses whose lock starts at reading 0, whatever its wheels: there the planned hand meets no number by chance. */
const SEEDS = Array.from({ length: 5000 }, (_, seed) => seed).filter((seed) => seededChance(seed)() < 1 / 100);
/** Longer than an encoder lock waits for the next motion, milliseconds. */
const LONG_REST = 31_000;

/** What the page tells a screen reader in a state, with the help on "counts"; # is the number being dialed. */
const TOLD: Readonly<Record<DialingState, string>> = {
  waiting: "waiting for the first turn",
  wrongWay: "turning the wrong way",
  turning: "turning to number #",
  resting: "on number #",
  overrun: "past number #",
  drawing: "drawing the bolt",
  failed: "Did not open, after",
  open: "Opened in",
  thrown: "Not secure yet. Keep turning",
  secured: "Secured.",
};

/** Which plate of the strip is marked: a number's, the draw's, or none. */
function markedIn({ value, context }: ChartState, profile: Profile): number[] {
  if (value === "waiting" || value === "wrongWay") return [0];
  if (value === "turning" || value === "resting" || value === "overrun") return [context.number];
  return value === "drawing" || value === "open" ? [profile.procedure.length] : [];
}

/** What the last plate says of the bolt, where the state settles it. */
const BOLT: Partial<Record<DialingState, string>> = {
  failed: "bolt stays",
  open: "bolt back",
  thrown: "bolt thrown",
  secured: "spun off",
};

interface Seen {
  readonly told: string;
  readonly marked: readonly number[];
  readonly bolt: string;
}

/** What the page shows of its state. */
const seenOn = (page: Page): Promise<Seen> =>
  page.evaluate(() => {
    const steps = [...document.querySelectorAll(".strip > li")];
    return {
      told: document.querySelector("[data-testid=state]")?.textContent ?? "",
      marked: steps.flatMap((step, k) => (step.getAttribute("aria-current") === "step" ? [k] : [])),
      bolt: steps.at(-1)?.querySelector(".strip-pips")?.textContent ?? "",
    };
  });

function expectedIn(state: ChartState, profile: Profile): Record<keyof Seen, unknown> {
  return {
    told: expect.stringContaining(TOLD[state.value].replace("#", String(state.context.number + 1))),
    marked: markedIn(state, profile),
    bolt: BOLT[state.value] ?? expect.any(String),
  };
}

/** A lock that is turned as the page's is, so that a hand can be planned. Where its wheels start does not matter. */
class Twin {
  attempt: Attempt;
  private readonly profile: Profile;

  constructor(profile: Profile, dial: number) {
    this.profile = profile;
    this.attempt = new Attempt(profile, COMBINATION, { dial });
  }

  turnBy(by: number, now_ms: number): void {
    this.attempt.turnBy(by, now_ms);
  }

  restart(dial: number): void {
    const { memory } = this.attempt;
    this.begin({ dial, memory });
  }

  /** After an end the page takes the next motion for a new attempt, unless the bolt still holds on to the dial. */
  endAttempt(): void {
    const { isCoupled, dial, pack, memory } = this.attempt;
    if (!isCoupled) this.begin(pack === null ? { dial, memory } : { dial, slack: pack.slack() });
  }

  private begin(start: AttemptStart): void {
    this.attempt = new Attempt(this.profile, COMBINATION, start);
  }
}

/** A hand that walks paths of the chart on the page. */
class Walker {
  private readonly bench: Bench;
  private readonly profile: Profile;
  private readonly hand: KeyHand;
  private twin: Twin;
  private now_ms = 0;

  private constructor(bench: Bench, profile: Profile, dial: number) {
    this.bench = bench;
    this.profile = profile;
    this.hand = new KeyHand(bench, profile.graduations);
    this.twin = new Twin(profile, dial);
  }

  /** Sets up a lock nobody has dialed yet; its wheels stand elsewhere each time. */
  static async at(bench: Bench, profile: Profile, index: number): Promise<Walker> {
    const seed = SEEDS[index % SEEDS.length] ?? 0;
    await bench.open({ profile: profile.id, combination: COMBINATION.join("-"), help: "counts", seed });
    await expect(bench.state).toHaveText(TOLD.waiting);
    await bench.expectReading(0, profile.graduations);
    return new Walker(bench, profile, await bench.reading());
  }

  async take({ event, from, to }: PathStep): Promise<void> {
    if (event.type === "attempt.restarted") {
      await this.bench.dial.press("r");
      this.twin.restart(await this.bench.reading());
    } else if (event.type === "pause.exceeded") {
      await this.bench.page.clock.runFor(LONG_REST);
      this.turnTwin(0, LONG_REST);
    } else await this.turn(planMotion(this.twin.attempt, from, event));
    if (to.value === "failed" || to.value === "secured") this.twin.endAttempt();
  }

  async turn(moves: readonly number[]): Promise<void> {
    for (const by of moves) {
      await this.hand.turnBy(by);
      this.turnTwin(by, 100);
    }
    await this.bench.expectReading(this.twin.attempt.dial, this.profile.graduations, 0.001);
  }

  private turnTwin(by: number, after_ms: number): void {
    this.now_ms += after_ms;
    this.twin.turnBy(by, this.now_ms);
  }
}

const textOf = (path: readonly PathStep[]) => path.map(({ arrow, to }) => `${arrow} -> ${to.value}`).join("\n");

// The dial alone in view: what the browser need not draw, it does not wait for.
test.use({ viewport: { width: 420, height: 560 } });

/** A fresh start under the last number of an encoder lock: it takes a turn that was long enough to be a first one. */
const isNewFirstNumber = ({ event, from }: PathStep, { kind, procedure }: Profile) =>
  kind === "dial-encoder" && event.type === "fresh.started" && from.context.number === procedure.length - 1;

/** An encoder lock dialed again before it is secured: the first turn of that secures it, so the page never takes it at once. */
const isDialedOn = ({ event, from }: PathStep, { kind }: Profile) =>
  kind === "dial-encoder" && event.type === "bolt.retracted" && from.value === "thrown";

const isOutOfReach = (step: PathStep, profile: Profile) => isNewFirstNumber(step, profile) || isDialedOn(step, profile);

/** A path as far as a hand can go that dials the last number no longer than it must; the rest is walked by `LONG_TURNS`. */
function walkable(path: readonly PathStep[], profile: Profile): readonly PathStep[] {
  const end = path.findIndex((step) => isOutOfReach(step, profile));
  return end < 0 ? path : path.slice(0, end);
}

/** A long last turn, and a turn after it that is too long for a draw: the first of the two was a new first number. */
const LONG_TURNS = [
  { why: "stopped past its number", moves: [338, -267, 367, -41] },
  { why: "stopped on its number", moves: [341, -270, 355, -41] },
];

for (const id of ["three-wheel", "dial-encoder"]) {
  test.describe(`the page of the ${id} lock`, () => {
    const profile = shippedProfile(id);
    const whole = dialingPaths(profile);
    const paths = whole.map((path) => walkable(path, profile));

    test("is asked for every state and transition of the dialing chart", () => {
      const arrows = new Set(paths.flatMap((path) => path.map(({ arrow }) => arrow)));
      const states = new Set(paths.flatMap((path) => path.flatMap(({ from, to }) => [from.value, to.value])));
      const all = Object.keys(dialingMachine(profile).states);
      process.stdout.write(
        `dialing chart on the page, ${id}: ${states.size} of ${all.length} states, ${arrows.size} transitions, ` +
          `${paths.length} paths, ${paths.flat().length} steps\n`,
      );
      expect([...states].sort()).toEqual(all.sort());
      // How many there are is the chart's own affair, and its model test's: here, that none is forgotten.
      const cut = whole
        .flat()
        .filter((step) => isOutOfReach(step, profile))
        .map(({ arrow }) => arrow);
      expect(new Set([...arrows, ...cut])).toEqual(arrowsOf(profile));
      expect(new Set(cut).size).toBe(profile.kind === "dial-encoder" ? 11 : 0);
    });

    if (profile.kind === "dial-encoder") {
      for (const { why, moves } of LONG_TURNS) {
        test(`reads the attempt anew from a long last turn that ${why}`, async ({ bench, page }) => {
          await page.clock.install();
          const walker = await Walker.at(bench, profile, 0);
          await walker.turn(moves.slice(0, 3));
          await expect(page.getByTestId("state")).toContainText("number 3");
          await walker.turn(moves.slice(3));
          await expect(page.getByTestId("state")).toContainText("turning to number 2");
        });
      }
    }

    for (let first = 0; first < paths.length; first += BATCH) {
      const batch = paths.slice(first, first + BATCH);
      test(`shows the chart's state at every step of paths ${first + 1} to ${first + batch.length}`, async ({
        bench,
        page,
      }) => {
        await page.clock.install();
        for (const [i, path] of batch.entries()) {
          const walker = await Walker.at(bench, profile, first + i);
          for (const [k, step] of path.entries()) {
            await walker.take(step);
            await expect
              .poll(() => seenOn(page), { message: textOf(path.slice(0, k + 1)), timeout: 2000 })
              .toEqual(expectedIn(step.to, profile));
          }
        }
      });
    }
  });
}
