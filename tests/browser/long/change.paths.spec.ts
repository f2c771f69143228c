import { ChangeSession } from "../../../src/app/exercises/handover/change/changeSession";
import { STAGE_OF } from "../../../src/app/exercises/handover/change/changeWords";
import { changeStateInWords } from "../../../src/handover/change/changeAdvice";
import type { ChangeFact } from "../../../src/handover/change/changeFact";
import type { ChangeAct, ChangeState } from "../../../src/handover/change/changeInHand";
import { EncoderChange } from "../../../src/handover/change/encoderChange";
import { encoderChangeMachine } from "../../../src/handover/change/encoderChangeMachine";
import { packChangeMachine } from "../../../src/handover/change/packChangeMachine";
import type { ChangeContext } from "../../../src/handover/change/provingChart";
import { seededChance } from "../../../src/statistics/chance";
import { DIAL_FACTS, KEY_FACTS, makeByKey, makeOnDial } from "../../support/changeWays";
import { ChangePage } from "../change";
import { expect, test } from "../page";
import { type ChartStep, pagePaths, wayTo } from "./chartPaths";

type Step = ChartStep<ChangeFact, ChangeContext>;

/** What a hand did to a twin of the page's lock, to be done on the page. */
type Deed = { readonly by: number } | { readonly act: ChangeAct };

const NAMES: Readonly<Record<ChangeAct, string>> = {
  insertKey: "Insert the key",
  turnKey: "Turn the key",
  turnKeyBack: "Turn the key back",
  withdrawKey: "Remove the key",
  changeAgain: "Change it again",
  pressButton: "Press the change button",
  shutDoor: "Shut the door",
};

/** The page's own lock a second time, and what is done to it to make a fact happen: in tenths, as keys turn. */
function twinOf({ profile }: ChangePage) {
  const { change } = new ChangeSession({ profile, help: "full" }, seededChance(5));
  const { turnBy, act } = change;
  let deeds: Deed[] = [];
  change.turnBy = (wish) => {
    const by = Math.round(wish * 10) / 10;
    deeds.push({ by });
    return turnBy.call(change, by);
  };
  change.act = (one) => {
    deeds.push({ act: one });
    return act.call(change, one);
  };
  return (fact: ChangeFact): readonly Deed[] => {
    deeds = [];
    if (change instanceof EncoderChange) makeOnDial(change, fact);
    else makeByKey(change, fact);
    return deeds;
  };
}

async function seenOn({ page, result }: ChangePage) {
  const marked = page.getByRole("list", { name: "Parts of the change" }).locator("[aria-current=step]");
  return {
    state: await result.locator("h2 small").textContent(),
    stage: await marked.evaluate((item) => [...(item.parentElement?.children ?? [])].indexOf(item)),
  };
}

const KINDS = [
  { id: "two-wheel", chart: packChangeMachine, facts: KEY_FACTS },
  { id: "dial-encoder", chart: encoderChangeMachine, facts: DIAL_FACTS },
];

for (const { id, chart, facts } of KINDS) {
  const paths: readonly (readonly Step[])[] = pagePaths(
    chart,
    facts,
    (fact: ChangeFact, { context }: Step["to"]) => `${fact.type} ${context.proofs}`,
    () => true,
  );

  test(`the page of the ${id} lock is asked for every state of a change, and every fact in it`, () => {
    const steps = paths.flat();
    const arrows = new Set(steps.map(({ arrow }) => arrow));
    process.stdout.write(
      `change on the page, ${id}: ${arrows.size} arrows, ${paths.length} paths, ${steps.length} steps\n`,
    );
    expect(new Set(steps.flatMap(({ from, to }) => [from.value, to.value]))).toEqual(
      new Set(Object.keys(chart.states)),
    );
    expect(new Set(steps.map(({ event }) => event.type))).toEqual(new Set(facts.map(({ type }) => type)));
  });

  for (const [k, path] of paths.entries()) {
    test(`the ${id} lock: the page shows the chart's state at every step of path ${k + 1}`, async ({ page }) => {
      test.setTimeout(180_000);
      // Time stands still: no pause runs out between two moves.
      await page.clock.install();
      const change = new ChangePage(page, id);
      await change.open();
      const plan = twinOf(change);
      for (const [i, step] of path.entries()) {
        for (const deed of plan(step.event)) {
          if ("by" in deed) await change.hand.turnBy(deed.by);
          else await change.press(NAMES[deed.act]);
        }
        const message = wayTo(path, i);
        const value = step.to.value as ChangeState;
        await expect
          .poll(() => seenOn(change), { message, timeout: 5000 })
          .toEqual({ state: changeStateInWords(value), stage: STAGE_OF[value] });
      }
    });
  }
}
