import { expect, test } from "vitest";
import type { ChangeState } from "../../../src/handover/change/changeInHand";
import { PackChange } from "../../../src/handover/change/packChange";
import { packChangeMachine } from "../../../src/handover/change/packChangeMachine";
import { KEY_FACTS, makeByKey } from "../../support/changeWays";
import { walkedChart } from "../../support/walkedChart";
import { dialTo, KEYED } from "./changeHands";
import { walkOnLock } from "./changeWalk";

const walked = walkedChart(packChangeMachine, KEY_FACTS);

const isAtPort = ({ keyed }: PackChange) => keyed.unaligned().length === 0;
const isNewSet = ({ keyed, wanted, profile }: PackChange) =>
  keyed.hubErrors(wanted).every((error, k) => Math.abs(error) <= (profile.wheelPack.gateTolerance[k] ?? 0));

const TRUE_OF: Readonly<Partial<Record<ChangeState, (change: PackChange) => boolean>>> = {
  dialingPresent: (change) => change.keyed.key === "out" && !isAtPort(change) && change.proof === null,
  presentStands: (change) => change.keyed.key === "out" && isAtPort(change) && change.proof === null,
  keyIn: (change) => change.keyed.key === "in" && isAtPort(change),
  keyForced: (change) => change.keyed.key === "in" && !isAtPort(change),
  dialingNew: (change) => change.keyed.key === "turned" && !isNewSet(change),
  newStands: (change) => change.keyed.key === "turned" && isNewSet(change),
  keyBack: (change) => change.keyed.key === "in" && isAtPort(change) && change.record.newHand !== null,
  proving: (change) => change.proof !== null && change.keyed.key === "out",
  proofRefused: (change) => change.proof !== null && change.proof.refused > 0 && change.retraction === 0,
  proved: (change) => change.proof !== null && change.proof.opened >= 3,
  spoiled: (change) => change.isSpoiled,
  doorShut: (change) => change.keyed.key === "out",
};

test("the chart of a change with a key is walked through every state and every arrow, and none is drawn in vain", () => {
  process.stdout.write(
    `change with a key: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
  );
  expect(walked.states).toEqual(Object.keys(packChangeMachine.states).sort());
  expect([walked.untaken, walked.unused]).toEqual([[], []]);
});

test.each(KEYED)("every path is one that a hand can make on a real $id", { timeout: 30_000 }, (profile) => {
  const present = profile.asSet ?? [];
  const wanted = present.map((number, k) => (number + 9 + 4 * k) % 100);
  const fresh = () => new PackChange(profile, present, wanted);
  walkOnLock({ chart: packChangeMachine, fresh, make: makeByKey, isTrue: TRUE_OF }, walked.paths);
});

test("a key put in while the new combination is proved finds the rings where they are", () => {
  const [profile] = KEYED;
  if (profile === undefined) throw new TypeError("no lock takes a key");
  const present = profile.asSet ?? [];
  const change = new PackChange(
    profile,
    present,
    present.map((number) => number + 9),
  );
  const way = [
    "present.stands",
    "key.inserted",
    "key.turned",
    "new.stands",
    "key.turnedBack",
    "key.withdrawn",
  ] as const;
  for (const type of way) makeByKey(change, { type });
  expect(change.state).toBe("proving");
  // Dialed to the port once more: the key may be turned.
  dialTo(change, profile, change.wanted, profile.changing.index);
  change.act("insertKey");
  expect(change.state).toBe("keyIn");
});
