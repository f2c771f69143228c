import { expect, test } from "vitest";
import { combinationInClear } from "../../../src/records/handover/combinationInClear";
import { seededChance } from "../../../src/statistics/chance";

/** What people write into a record that is no combination. */
const INNOCUOUS: readonly (readonly string[])[] = [
  [
    "P. Underbell",
    "R. Tarn",
    "D. Mallow",
    "I. Vail",
    "Lock 417",
    "Tool crib, door 2",
    "D. Mallow and the night desk",
    "",
  ],
  [
    "P. Underbell",
    "R. Tarn",
    "C. Xenner",
    "",
    "Lock 305",
    "Records room, north door",
    "C. Xenner, L. Ives",
    "Installed 2026-11-26, next look 26.11.2027.",
  ],
  [
    "M. Quill",
    "E. Sallow",
    "V. Lorn",
    "E. Quill",
    "Lock 880",
    "Room 3.14, floor 3",
    "V. Lorn, phone +1 (387) 126-4455, ext. 12",
    "Dial 44 inches above the floor, door 36 x 80 inches.",
  ],
  [
    "M. Quill",
    "J. Pike",
    "A. Bec",
    "",
    "Lock 512",
    "Coin room, ground floor",
    "A. Bec and 2 deputies, rooms 12 and 14",
    "I shut it at 08:30 and opened it at 08:45; 3 keys, 2 copies.",
  ],
  [
    "O. Brandreth",
    "N. Harrow",
    "D. Mallow",
    "",
    "Lock 731",
    "Sample store, door 5",
    "the desk, 555-0142, from 7 to 19",
    "Zero within 0.25 left and 0.13 right after 5 readings each; three proofs, two people.",
  ],
  [
    "J. Pike",
    "M. Quill",
    "L. Civic",
    "",
    "Lock 199",
    "Building 7, floor 2, room 215",
    "five people in building 7",
    "Fire drill every 90 days, alarm zone 4, work order 20417, cabinet B, shelf C, part XII of the manual.",
  ],
];

test("innocuous records are let pass with almost every combination", () => {
  const chance = seededChance(1);
  const draw = () => Math.floor(chance() * 100);
  const alarms = (length: number) => {
    const tries = 300;
    let count = 0;
    for (let k = 0; k < tries; k++) {
      const numbers = Array.from({ length }, draw);
      for (const record of INNOCUOUS) if (combinationInClear(record, numbers, 100) !== undefined) count += 1;
    }
    return count / (tries * INNOCUOUS.length);
  };
  // 12,000 of each gave 0.33 %, 0.11 % and none: two numbers next to each other are common, and so cost most.
  expect(alarms(2)).toBeLessThan(0.01);
  expect(alarms(3)).toBeLessThan(0.004);
  expect(alarms(4)).toBeLessThan(0.001);
});
