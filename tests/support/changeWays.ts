import type { ChangeFact } from "../../src/handover/change/changeFact";
import type { ChangeAct } from "../../src/handover/change/changeInHand";
import type { EncoderChange } from "../../src/handover/change/encoderChange";
import type { PackChange } from "../../src/handover/change/packChange";
import type { Combination } from "../../src/lock/combination";
import { dialTo, openBy } from "../handover/change/changeHands";

/** All that the chart of a change with a key takes in. */
export const KEY_FACTS: readonly ChangeFact[] = [
  { type: "present.stands" },
  { type: "present.left" },
  { type: "key.inserted" },
  { type: "key.turned" },
  { type: "pack.spoiled", numbers: [], errors: [] },
  { type: "new.stands" },
  { type: "new.left" },
  { type: "key.turnedBack" },
  { type: "key.withdrawn" },
  { type: "change.again" },
  { type: "proof.opened" },
  { type: "proof.refused" },
  { type: "door.shut" },
];

/** All that the chart of a change on the dial takes in. */
export const DIAL_FACTS: readonly ChangeFact[] = [
  { type: "present.opened" },
  { type: "present.refused" },
  { type: "present.closed" },
  { type: "button.pressed" },
  { type: "entry.taken" },
  { type: "entry.refused", number: 0 },
  { type: "entry.refused", number: 2 },
  { type: "entries.agreed" },
  { type: "entries.differed" },
  { type: "proof.opened" },
  { type: "proof.refused" },
  { type: "door.shut" },
];

/** Acts of the hand, by the fact that each is for. */
const ACT_OF: Partial<Record<ChangeFact["type"], ChangeAct>> = {
  "key.inserted": "insertKey",
  "key.turned": "turnKey",
  "pack.spoiled": "turnKey",
  "key.turnedBack": "turnKeyBack",
  "key.withdrawn": "withdrawKey",
  "change.again": "changeAgain",
  "button.pressed": "pressButton",
  "door.shut": "shutDoor",
};

const off = (numbers: Combination, by: number) => numbers.map((number, k) => (k === 1 ? number + by : number));

function actFor(change: PackChange | EncoderChange, { type }: ChangeFact): void {
  const act = ACT_OF[type];
  if (act === undefined) return;
  const { refusal } = change.act(act);
  if (refusal !== null) throw new Error(`${act}: ${refusal}`);
}

/** Makes a fact happen by dial, key and door. */
export function makeByKey(change: PackChange, fact: ChangeFact): void {
  const { profile } = change;
  const { index } = profile.changing;
  const throwBolt = () => change.retraction > 0 && change.turnBy(profile.graduations);
  const open = (numbers: readonly number[]) => {
    throwBolt();
    openBy(change, profile, numbers);
  };
  const set = change.setCombination ?? [];
  const ways: Partial<Record<ChangeFact["type"], () => unknown>> = {
    "present.stands": () => dialTo(change, profile, change.hand.combination, index),
    "present.left": () => change.turnBy(5),
    "new.stands": () => dialTo(change, profile, change.wanted, index),
    "new.left": () => change.turnBy(5),
    // The wheels carried away from where the new combination opens.
    "change.again": () => change.turnBy(profile.graduations + 40),
    "proof.opened": () => open(set),
    "proof.refused": () => open(set.map((number, k) => (k === 0 ? (number + 33) % 100 : number))),
    // The key must be out first; a spoiled pack gives it back.
    "door.shut": () => {
      if (change.keyed.key === "turned") change.act("turnKeyBack");
      if (change.keyed.key === "in") change.act("withdrawKey");
    },
  };
  ways[fact.type]?.();
  actFor(change, fact);
}

/** Makes a fact happen by dial, button and door. */
export function makeOnDial(change: EncoderChange, fact: ChangeFact): void {
  const { profile, present, wanted } = change;
  const throwBolt = () => change.retraction > 0 && change.turnBy(profile.draw.travel + 30);
  const dial = (numbers: Combination) => {
    // A run that goes on the first way is no fresh start.
    throwBolt();
    change.turnBy(-40);
    openBy(change, profile, numbers);
  };
  const ways: Partial<Record<ChangeFact["type"], () => unknown>> = {
    "present.opened": () => dial(present),
    "present.refused": () => dial(off(present, 5)),
    "present.closed": throwBolt,
    "entry.taken": () => dial(wanted),
    "entry.refused": () => {
      const tooFew = fact.type === "entry.refused" && fact.number > 0;
      for (const by of tooFew ? [-40, 350, -90, 150, -20] : [-40, 350, -250, 150, -10, 20]) change.turnBy(by);
    },
    "entries.agreed": () => dial(off(wanted, 1)),
    "entries.differed": () => dial(off(wanted, 2)),
    "proof.opened": () => dial(wanted),
    "proof.refused": () => dial(off(wanted, 5)),
  };
  ways[fact.type]?.();
  actFor(change, fact);
}
