import { describe, expect, test } from "vitest";
import { feltWords } from "../../../../src/app/exercises/handover/change/changeWords";
import { ChangeTry } from "../../../../src/app/sittings/tries/changeTry";
import { keptEnd } from "../../../../src/app/sittings/tries/jobTryRecord";
import { isRight } from "../../../../src/drill/marking/tryResult";
import type { ChangeAct } from "../../../../src/handover/change/changeInHand";
import { jobIsRight } from "../../../../src/records/jobRight";
import { dialTo, openBy } from "../../../handover/change/changeHands";
import { changeStation } from "../../../support/testSheet";
import { setupOf } from "../jobTries";

const STATION = changeStation({ combinations: { policy: "fixed", list: [[52, 17, 45]] } });
const INDEX = 10;

/** A try with a hand on its dial, a second a move. */
function inHand(station = STATION) {
  const one = new ChangeTry(setupOf(station));
  const { session } = one;
  let now = 1000;
  session.subscribe(() => one.worked(now));
  const dial = {
    get dial() {
      return session.change.dial;
    },
    turnBy: (by: number) => {
      now += 1000;
      session.turnBy(by, now);
    },
  };
  const { profile, present, wanted } = session.setup;
  const acts = (...each: ChangeAct[]) => {
    for (const act of each) session.act(act);
  };
  return {
    one,
    acts,
    dialTo: (numbers: readonly number[], index: number, errors: number[] = []) =>
      dialTo(dial, profile, numbers, index, errors),
    prove: (times: number, numbers = wanted) => {
      for (let k = 0; k < times; k++) {
        openBy(dial, profile, numbers);
        dial.turnBy(150);
      }
    },
    change: (errors: number[] = []) => {
      dialTo(dial, profile, present, INDEX);
      acts("insertKey", "turnKey");
      dialTo(dial, profile, wanted, INDEX, errors);
      acts("turnKeyBack", "withdrawKey");
    },
  };
}

describe("a try at changing a combination", () => {
  test("changed, proved three times and the door shut: right, and over by itself", () => {
    const hand = inHand();
    expect(hand.one.isBegun).toBe(false);
    hand.change();
    hand.prove(3);
    expect([hand.one.isBegun, hand.one.isEnded]).toEqual([true, false]);
    hand.acts("shutDoor");
    expect(hand.one.isEnded).toBe(true);
    const result = hand.one.result();
    expect(result).toMatchObject({ kind: "change", combination: [52, 17, 45], outcome: "true", proofs: 3, faults: [] });
    expect(result.time_ms).toBeGreaterThan(5000);
    expect(isRight(result, STATION)).toBe(true);
  });

  test("a number set off opens there alone, and does not count as opened as written", () => {
    const hand = inHand();
    hand.change([0, 4, 0]);
    hand.prove(1);
    hand.one.end();
    expect(hand.one.result()).toMatchObject({ outcome: "off", proofs: 0 });
    expect(hand.one.result().faults).toEqual([{ code: "number-set-off", size: expect.closeTo(4, 6) }]);
  });

  test("a miss begins the count of proofs again", () => {
    const hand = inHand();
    hand.change();
    hand.prove(2);
    hand.prove(1, [52, 27, 45]);
    hand.prove(1);
    hand.one.end();
    const result = hand.one.result();
    expect(result).toMatchObject({ outcome: "true", proofs: 1 });
    expect(isRight(result, STATION)).toBe(false);
  });

  test("a key turned in a pack that stands elsewhere spoils it; the hand feels that and is told no more", () => {
    const hand = inHand();
    hand.dialTo([38, 71, 26], 0);
    hand.acts("insertKey", "turnKey");
    const { session } = hand.one;
    expect(feltWords(session.change, session.refused)).toBe("The key turned hard, and something gave.");
    hand.acts("withdrawKey");
    expect(feltWords(session.change, session.refused)).toBe("The key does not come out.");
    hand.one.end();
    expect(hand.one.result()).toMatchObject({ outcome: "spoiled", proofs: 0 });
  });

  test.each<{
    why: string;
    work: (hand: ReturnType<typeof inHand>) => void;
    outcome: string;
    missed: readonly string[];
  }>([
    {
      why: "the key left turned",
      work: ({ acts, dialTo: dial, one }) => {
        dial(one.session.change.present, INDEX);
        acts("insertKey", "turnKey");
      },
      outcome: "key-turned",
      missed: ["key-left-turned"],
    },
    {
      why: "new numbers set, the key still in",
      work: ({ acts, dialTo: dial, one }) => {
        const { present, wanted } = one.session.change;
        dial(present, INDEX);
        acts("insertKey", "turnKey");
        dial(wanted, INDEX);
        acts("turnKeyBack");
      },
      outcome: "true",
      missed: ["not-proved"],
    },
    {
      why: "another number set, the key still in",
      work: ({ acts, dialTo: dial, one }) => {
        const { present, wanted } = one.session.change;
        dial(present, INDEX);
        acts("insertKey", "turnKey");
        dial(wanted, INDEX, [0, 4, 0]);
        acts("turnKeyBack");
      },
      outcome: "off",
      missed: ["number-set-off"],
    },
    {
      why: "two proofs, a miss, a proof",
      work: (hand) => {
        hand.change();
        hand.prove(2);
        hand.prove(1, [52, 27, 45]);
        hand.prove(1);
      },
      outcome: "true",
      missed: ["not-proved"],
    },
    { why: "nothing done", work: (hand) => hand.prove(1), outcome: "unchanged", missed: ["not-changed"] },
  ])("$why: the sitting and the logbook say the same of it", ({ work, outcome, missed }) => {
    const hand = inHand();
    work(hand);
    hand.one.end();
    const result = hand.one.result();
    const { details, missed: kept } = hand.one.jobEnd;
    expect([result.outcome, kept]).toEqual([outcome, missed]);
    expect(details).toMatchObject({ outcome: result.outcome, proofs: result.proofs });
    expect(keptEnd(result).missed).toEqual(kept);
    expect(jobIsRight({ kind: "change", details, missed: [...kept] })).toBe(isRight(result, STATION));
  });

  test("ended at once it is not changed, and nothing done after the end counts", () => {
    const hand = inHand();
    hand.prove(1);
    hand.one.end();
    const before = hand.one.result();
    expect(before.outcome).toBe("unchanged");
    const { version } = hand.one;
    hand.acts("shutDoor");
    expect(hand.one.version).toBe(version);
  });

  test("is the same for everybody with the sheet and its seed", () => {
    const numbers = (seed: number) => new ChangeTry(setupOf(changeStation(), seed)).session.setup;
    expect(numbers(7)).toEqual(numbers(7));
    expect(numbers(8).wanted).not.toEqual(numbers(7).wanted);
  });
});
