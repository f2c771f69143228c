import { sheetToLink } from "../../../src/drill/sheet/sheetLink";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { profileRules } from "../../../src/zeroing/zeroingRules";
import { doorWith, groupOf, PREPARED, PROVED, RECORD } from "../../browser/handover";
import { indexErrorIn, LOCK, PER_TURN, REST, seenIn, wayOnto } from "../../browser/zeroing";
import { dialingStation, testSheet } from "../../support/testSheet";
import { until } from "./driver";
import { DIAL, dialWith, keyHand, mouseHand } from "./remoteHands";
import type { RemotePage } from "./remotePage";

/** Something that people do in the app, from beginning to end. @throws where it does not come out */
export type Journey = (page: RemotePage) => Promise<void>;

const PACK = shippedProfile("three-wheel");
const OWN = PACK.asSet ?? [];
const STATE = "[data-testid=state]";

/** The caption of a hidden table once lay over a heading. */
async function assertSeen(page: RemotePage, selector: string): Promise<void> {
  const over = await page.run<string | null>(
    `const wanted = document.querySelector(arguments[0]);
    wanted.scrollIntoView({ block: "center", behavior: "instant" });
    const { left, top, width, height } = wanted.getBoundingClientRect();
    const there = document.elementFromPoint(left + Math.min(width, 60) / 2, top + height / 2);
    return wanted.contains(there) ? null : (there?.textContent ?? "nothing").slice(0, 60);`,
    selector,
  );
  if (over !== null) throw new Error(`"${over}" lies over ${selector}`);
}

const byPointer: Journey = async (page) => {
  await page.open("#/bench?profile=three-wheel&seed=5");
  await dialWith(page, await mouseHand(page, PACK.graduations), PACK, OWN);
  await page.point("up");
  await page.waitFor(STATE, /^Opened/);
  await assertSeen(page, ".turn-chart h2");
};

const byKey: Journey = async (page) => {
  await page.open("#/bench?profile=three-wheel&seed=6");
  await page.focus(DIAL);
  await dialWith(page, keyHand(page, PACK.graduations), PACK, OWN);
  await page.waitFor(STATE, /^Opened/);
};

const inLogbook: Journey = async (page) => {
  await page.open("#/logbook");
  await page.waitFor("main table", /Opened/);
};

const RULES = LOCK.kind === "dial-encoder" ? profileRules(LOCK) : null;

const zero: Journey = async (page) => {
  if (RULES === null) throw new Error("this lock has no zero to set");
  await page.open("#/zeroing?seed=5");
  await page.focus("#ring-turn");
  const steps = Math.round(indexErrorIn(await page.attribute("#ring-turn", "aria-valuetext")) / 0.05);
  await page.type(...Array.from({ length: Math.abs(steps) }, () => (steps > 0 ? "ArrowRight" : "ArrowLeft")));
  await page.press("Clamp the ring");
  const hand = keyHand(page, PER_TURN);
  for (const side of RULES.order) {
    for (let stop = 1; stop <= 3; stop++) {
      await hand(wayOnto(side, 0, seenIn(await page.attribute(DIAL, "aria-valuetext"))));
      await new Promise((done) => setTimeout(done, REST));
      await page.type(" ");
      await page.waitFor("[data-testid=zeroing-last]", / stop (one|two|three) of three recorded/);
    }
  }
  await page.waitFor("[data-testid=zeroing-state]", /The zero is set in both directions/);
};

const SHEET = testSheet({
  title: "Short sitting",
  instructions: ["Dial it once."],
  cautions: ["No lock in use."],
  stations: [dialingStation({ id: "open it", repetitions: 1, passMarks: { firstTime: 1 } })],
});

const sitting: Journey = async (page) => {
  await page.open(`#/sittings?seed=5&sheet=${sheetToLink(SHEET)}`);
  await page.press("I have read it");
  await until("the name is asked for, or the clock", () =>
    page.run<true | null>("return document.activeElement.matches('input, button') || null"),
  );
  await page.type(..."Orrin", "Enter");
  await page.focus(DIAL);
  await dialWith(page, keyHand(page, PACK.graduations), PACK, OWN);
  await page.waitFor("[aria-label=Verdict] [role=status], .verdict [role=status]", /\w/);
};

const handover: Journey = async (page) => {
  const { profile, seed } = doorWith({ slips: false });
  await page.open(`#/handover?view=run&profile=${profile.id}&seed=${seed}&hands=off`);
  await page.waitFor("[data-testid=run-told]", /\w/);
  const does = async (...names: readonly string[]) => {
    for (const name of names) {
      const title = groupOf(name);
      if (title !== undefined && (await page.has(title))) await page.press(title);
      await page.press(name);
    }
  };
  await does(...PREPARED, "Change the combination", "Set it", ...PROVED, "Write the record");
  for (const [label, value] of Object.entries(RECORD)) {
    await page.run(
      `[...document.querySelectorAll("dialog label, [role=dialog] label")].find((one) => one.textContent.startsWith(arguments[0])).control.focus()`,
      label,
    );
    await page.type(...value);
  }
  await page.press("Write the record");
  await does("Sign the door off");
  await page.waitFor("[data-testid=debrief-verdict]", /^Handed over with every proof and without a fault\.$/);
};

/** The main journeys, in an order in which the logbook has something to show. */
export const JOURNEYS: Readonly<Record<string, Journey>> = {
  "dial to open by pointer": byPointer,
  "dial to open by key": byKey,
  "the logbook shows it": inLogbook,
  "set a zero": zero,
  "a sitting to its verdict": sitting,
  "a handover with hands off": handover,
};
