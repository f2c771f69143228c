import { expect, test } from "vitest";
import { tryRow } from "../../../src/app/verdicts/sittingWords";
import {
  changeStation,
  handoverStation,
  inspectionStation,
  serviceStation,
  testSheet,
  troubleStation,
} from "../../support/testSheet";
import { changeTry, handoverTry, inspectionTry, serviceTry, troubleTry } from "../../support/testTries";

const sheet = testSheet({
  stations: [changeStation({ timeLimit_s: 240 }), troubleStation(), handoverStation({ title: "Records room" })],
});

test.each([
  { one: changeTry(), row: ["Station 1, try 1", "opens as written", "3 proofs", "none", "240.0 s"] },
  {
    one: changeTry({ outcome: "off", proofs: 1, faults: [{ code: "number-set-off", size: 0.8 }], time_ms: 250_000 }),
    row: ["Station 1, try 1", "opens, but not as written, too late", "1 proof", "a number set off", "250.0 s"],
  },
  {
    one: troubleTry({ station: 1, sizeError: -0.25 }),
    row: [
      "Station 2, try 1",
      "named right: index slipped",
      "size off by −0.3 graduations",
      "2 tries, 4 measurements",
      "180.0 s",
    ],
  },
  {
    one: troubleTry({ station: 1, isNamedRight: false, sizeError: null }),
    row: ["Station 2, try 1", "guessed, or wrong place: index slipped", "–", "2 tries, 4 measurements", "180.0 s"],
  },
  {
    one: troubleTry({ station: 1, named: "lost-motion", isNamedRight: false, sizeError: null, tries: 1 }),
    row: ["Station 2, try 1", "not found: index slipped", "–", "1 try, 4 measurements", "180.0 s"],
  },
  {
    one: handoverTry({ station: 2, undone: 1 }),
    row: ["Records room, try 1", "handed over", "1 step undone", "none", "600.0 s"],
  },
  {
    one: handoverTry({
      station: 2,
      isHandedOver: false,
      missing: ["way-out", "record"],
      faults: [{ code: "shut-in" }],
    }),
    row: [
      "Records room, try 1",
      "not handed over; still missing: way out not checked; record not written",
      "0 steps undone",
      "someone shut inside",
      "600.0 s",
    ],
  },
  {
    one: handoverTry({ station: 2, isBrokenOff: true }),
    row: ["Records room, try 1", "lost to a reload", "–", "–", "–"],
  },
])("a job as a row: $row.1", ({ one, row }) => {
  const { place, outcome, stops, faults, time } = tryRow(one, sheet);
  expect([place, outcome, stops, faults, time]).toEqual(row);
});

test.each([
  { one: serviceTry({ conditions: [], found: [], acts: 2 }), column: "stops", says: "2 acts, no defect to find" },
  { one: inspectionTry({ faults: [], named: [] }), column: "outcome", says: "no fault to find, none named" },
] as const)("a good lock has nothing to find; that is no praise of the try: $says", ({ one, column, says }) => {
  const good = testSheet({ stations: [one.kind === "service" ? serviceStation() : inspectionStation()] });
  expect(tryRow(one, good)[column]).toBe(says);
});
