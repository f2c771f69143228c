import { expect, test } from "vitest";
import { readingText } from "../../src/dialing/words";
import { type CamPosition, type Position, type Reading, reading } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LockTrain } from "../../src/lock/train/lockTrain";

const train = new LockTrain({ indexOffset: 1, lostMotion: 2, start: 4 }, 100);
const profile = shippedProfile("three-wheel");

/** Checked by the compiler: each of these lines must be an error, and stands in vain as soon as it is none. */
function mixed(): readonly unknown[] {
  // @ts-expect-error a cam is not where the dial is
  const dial: Position = train.camPosition;
  // @ts-expect-error what a lock takes the dial to be is not where it is
  const taken: Position = train.taken;
  // @ts-expect-error the dial is not where the cam is
  const cam: CamPosition = train.dial;
  // @ts-expect-error an index reads something else than where the dial stands
  const shown: Reading = train.dial;
  // @ts-expect-error no index reads a cam
  const read = reading(train.camPosition, 100);
  // @ts-expect-error what is written is a reading, and no place of a dial
  const text = readingText(train.dial, profile);
  return [dial, taken, cam, shown, read, text];
}

test("positions of each kind pass for numbers, and numbers for them", () => {
  const dial: Position = 4;
  const way: number = train.dial - dial + train.camPosition;
  expect(mixed()).toHaveLength(6);
  expect([way, reading(train.dial + 103, 100), readingText(reading(train.seen, 100), profile)]).toEqual([4, 7, "3.0"]);
});
