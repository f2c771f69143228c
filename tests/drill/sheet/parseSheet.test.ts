import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { DrillError } from "../../../src/drill/drillError";
import { DRILL_WORDS } from "../../../src/drill/drillWords";
import { parseSheet, sheetDoubts } from "../../../src/drill/sheet/parseSheet";
import { sheetJsonSchema } from "../../../src/drill/sheet/sheetSchema";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { LockError } from "../../../src/lock/lockError";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { problemText } from "../../../src/wording/problem";
import { anySheet } from "../../support/anySheet";
import {
  changeStation,
  dialingStation,
  fittingStation,
  handoverStation,
  inspectionStation,
  serviceStation,
  testSheet,
  troubleStation,
  zeroingStation,
} from "../../support/testSheet";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const paper = (count: number, passMark: number) => ({
  pauseAllowed: true,
  onReload: "resume" as const,
  clockHideable: true,
  questions: { topics: [{ topic: "zeroing" as const, count }], passMark },
});

/** Rules that leave the combination the three-wheel lock has, and no other. */
const onlyAsSet = {
  policy: "drawn" as const,
  rules: {
    excluded: [[0, 25] as const, [27, 37] as const, [39, 70] as const, [72, 99] as const],
    excludedLast: [[0, 25] as const, [27, 99] as const],
    minSeparation: 2,
    noStraight: true,
  },
};

const only = (station: object) => ({ ...testSheet(), stations: [station] });
const without = (key: string) => Object.fromEntries(Object.entries(testSheet()).filter(([name]) => name !== key));

describe("a sheet that is not sound gets a sentence that names the field", () => {
  test.each([
    { value: null, says: "sheet: this must be an object" },
    { value: [], says: "sheet: this must be an object" },
    { value: { ...testSheet(), format: "other" }, says: 'format must be "gatefall-sheet", not "other"' },
    {
      value: { ...testSheet(), version: 2 },
      says: "version must be 1, not 2; open a file of a later version with the Gatefall that made it",
    },
    { value: without("title"), says: "title must be a text of 1 to 120 characters (it is missing)" },
    { value: { ...testSheet(), purpose: "" }, says: "purpose must be a text" },
    { value: { ...testSheet(), stations: [] }, says: "stations must be a list of 1 to 40" },
    { value: { ...testSheet(), order: "sorted" }, says: 'order must be "blocked"' },
    { value: { ...testSheet(), seed: 1.5 }, says: "seed must be a whole number" },
    { value: { ...testSheet(), titel: "x" }, says: 'this has a field "titel"' },
    { value: only({ ...dialingStation(), reps: 3 }), says: 'stations[0] has a field "reps"' },
    {
      value: only({ ...dialingStation(), kind: "drawing" }),
      says: "must have a kind that this trainer knows (dialing, zeroing, change, trouble, handover, fitting, service, inspection)",
    },
    { value: only(dialingStation({ repetitions: 0 })), says: "stations[0].repetitions must be a whole number from 1" },
    {
      value: only(dialingStation({ profile: "no-such" })),
      says: 'stations[0].profile: profile "no-such" is not known',
    },
    { value: only({ ...dialingStation(), profile: 7 }), says: "stations[0].profile must be the id of a shipped" },
    {
      value: only({ ...dialingStation(), profile: { ...shippedProfile("three-wheel"), graduations: 5 } }),
      says: "stations[0].profile.graduations must be a whole number from 10 to 200, not 5",
    },
    {
      value: only(dialingStation({ combinations: { policy: "fixed", list: [[38, 71]] } })),
      says: "stations[0].combinations.list[0].combination has 2 numbers, but three-wheel takes 3",
    },
    {
      value: only(dialingStation({ combinations: { policy: "fixed", list: [[38, 71, 100]] } })),
      says: "combination[2] (100) is the mark 0 of this dial",
    },
    {
      value: only(dialingStation({ combinations: { policy: "drawn", rules: { minSeparation: 60, circular: true } } })),
      says: "stations[0].combinations: the rules leave no combination",
    },
    {
      value: only({ ...dialingStation(), combinations: { policy: "drawn", rules: { noStraigth: true } } }),
      says: 'stations[0].combinations.rules has "noStraigth", which is not a rule',
    },
    {
      value: only({ ...dialingStation(), combinations: { policy: "own" } }),
      says: 'stations[0].combinations.policy must be the policy "as-set", "drawn" or "fixed", as in {"policy":"fixed","list":[[38,71,26]]}, not "own"',
    },
    {
      value: only({ ...dialingStation(), combinations: undefined }),
      says: "stations[0].combinations must be the policy",
    },
    { value: only(dialingStation({ upTo: 4 })), says: "stations[0].upTo must be at most 3" },
    { value: only(dialingStation({ passMarks: { firstTime: 11 } })), says: "asks for 11 of 10 tries" },
    { value: only(dialingStation({ passMarks: { faultyTries: 11 } })), says: "allows 11 of 10 tries" },
    {
      value: only(dialingStation({ passMarks: { claim: { rate: 1, confidence: 0.9 } } })),
      says: "stations[0].passMarks.claim.rate must be a share",
    },
    { value: only(zeroingStation({ passMarks: { zeroed: 3 } })), says: "asks for 3 of 2 tries" },
    {
      value: only(dialingStation({ conditions: [{ kind: "heavy-dial", from: 11 }] })),
      says: "stations[0].conditions[0].from must be at most 10",
    },
    {
      value: only(dialingStation({ conditions: [{ kind: "lost-motion", size: 3 }] })),
      says: "stations[0].conditions[0].size must be a number of graduations from 0 to 2, not 3",
    },
    {
      value: only({ ...changeStation(), combinations: { policy: "as-set" } }),
      says: "stations[0].combinations: a change needs a new combination",
    },
    {
      value: only(changeStation({ profile: "fixed-pin" })),
      says: "stations[0].profile: the combination of fixed-pin cannot be changed",
    },
    {
      value: only(changeStation({ profile: { ...shippedProfile("three-wheel"), asSet: undefined } })),
      says: "stations[0].profile: three-wheel comes without a combination",
    },
    {
      value: only(changeStation({ combinations: { policy: "fixed", list: [[38, 71, 26]] } })),
      says: "stations[0].combinations: 38-71-26 is what three-wheel is set to already",
    },
    { value: only(changeStation({ combinations: onlyAsSet })), says: "the rules leave only 38-71-26" },
    { value: only(changeStation({ passMarks: { right: 5 } })), says: "passMarks.right asks for 5 of 4 tries" },
    { value: only(changeStation({ passMarks: { faultyTries: 5 } })), says: "allows 5 of 4 tries" },
    {
      value: only({ ...changeStation(), conditions: [{ kind: "heavy-dial" }] }),
      says: 'stations[0] has a field "conditions" that does not belong there',
    },
    {
      value: only(troubleStation({ pool: ["Index Slipped"] })),
      says: "stations[0].pool[0] must be a name in small letters",
    },
    { value: only(troubleStation({ pool: [] })), says: "stations[0].pool must be a list of 1 to 40" },
    {
      value: only(troubleStation({ pool: ["lost-motion", "lost-motion"] })),
      says: "stations[0].pool names lost-motion twice",
    },
    { value: only(troubleStation({ passMarks: { right: 7 } })), says: "passMarks.right asks for 7 of 6 tries" },
    { value: only(troubleStation({ passMarks: { sizeError: 6 } })), says: "sizeError must be a number of graduations" },
    { value: only({ ...handoverStation(), hand: "left" }), says: 'stations[0].hand must be "real" or "simulated"' },
    { value: only({ ...handoverStation(), fit: "later" }), says: 'stations[0].fit must be "first"' },
    { value: only({ ...fittingStation(), fit: "first" }), says: 'stations[0] has a field "fit"' },
    { value: only(handoverStation({ passMarks: { clean: 3 } })), says: "passMarks.clean asks for 3 of 2 tries" },
    { value: only(handoverStation({ passMarks: { faultyTries: 3 } })), says: "allows 3 of 2 tries" },
    { value: only(fittingStation({ passMarks: { right: 3 } })), says: "passMarks.right asks for 3 of 2 tries" },
    { value: only(inspectionStation({ passMarks: { right: 3 } })), says: "passMarks.right asks for 3 of 2 tries" },
    { value: only({ ...inspectionStation(), passMarks: { faults: 1 } }), says: "passMarks" },
    { value: only({ ...fittingStation(), passMarks: { faults: -1 } }), says: "passMarks.faults must be" },
    { value: only(serviceStation({ passMarks: { right: 3 } })), says: "passMarks.right asks for 3 of 2 tries" },
    { value: only({ ...serviceStation(), passMarks: { faults: 1.5 } }), says: "passMarks.faults must be" },
    { value: only({ ...fittingStation(), conditions: [] }), says: "conditions" },
    { value: testSheet({ stations: [dialingStation(), dialingStation()] }), says: 'the id "dial" is there twice' },
    { value: testSheet({ sitting: paper(3, 4) }), says: "sitting.questions.passMark must be at most 3" },
    {
      value: testSheet({
        sitting: {
          ...paper(3, 1),
          questions: {
            topics: [
              { topic: "zeroing", count: 1 },
              { topic: "zeroing", count: 1 },
            ],
            passMark: 1,
          },
        },
      }),
      says: "names zeroing twice",
    },
  ])("$says", ({ value, says }) => {
    const parse = () => parseSheet(value);
    expect(parse).toThrow(DrillError);
    expect(parse).toThrow(says);
    expect(parse).toThrow(/^sheet: /);
  });
});

test("any sound sheet comes back as it is, and again from its JSON", () => {
  fc.assert(
    fc.property(anySheet, (sheet) => {
      expect(parseSheet(sheet)).toEqual(sheet);
      expect(parseSheet(JSON.parse(JSON.stringify(sheet)))).toEqual(JSON.parse(JSON.stringify(sheet)));
    }),
  );
});

test("whatever comes in, it is a sheet or a sentence", () => {
  const anything = fc.oneof(fc.anything(), fc.record({ stations: fc.array(fc.anything()) }));
  fc.assert(
    fc.property(anything, (value) => {
      try {
        parseSheet(value);
      } catch (error) {
        expect(error instanceof DrillError || error instanceof LockError, String(error)).toBe(true);
      }
    }),
    { numRuns: 500 },
  );
});

test("a whole profile in a sheet gets its defaults", () => {
  const { title: _, ...bare } = shippedProfile("two-wheel");
  const [station] = parseSheet(only({ ...dialingStation(), profile: bare })).stations;
  expect(station?.profile).toMatchObject({ id: "two-wheel", title: "two-wheel" });
});

test("a fixed combination that breaks the rules of its lock is doubted, not refused", () => {
  const sheet = parseSheet(
    only(
      dialingStation({
        combinations: {
          policy: "fixed",
          list: [
            [38, 71, 26],
            [10, 20, 30],
          ],
        },
      }),
    ),
  );
  const doubts = sheetDoubts(sheet);
  expect(doubts).toHaveLength(3);
  for (const doubt of doubts) expect(problemText(doubt, DRILL_WORDS)).toMatch(/^stations\[0\]: 10-20-30: .*MIL-HDBK/);
});

test("the published JSON Schema is the one made from the schema (npm run schema)", () => {
  const published = readFileSync(new URL("../../../shared/sheet.schema.json", import.meta.url), "utf8");
  expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(sheetJsonSchema())));
});

describe("the published JSON Schema, in the hands of a validator of its own kind", () => {
  const isValid = new Ajv2020({ strict: false }).compile(sheetJsonSchema());

  test.each(SHIPPED_SHEETS.map((sheet) => [sheet.title, sheet] as const))("lets %s pass", (_, sheet) => {
    expect(isValid(sheet), JSON.stringify(isValid.errors)).toBe(true);
  });

  test("lets any sound sheet pass", () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        expect(isValid(JSON.parse(JSON.stringify(sheet))), JSON.stringify(isValid.errors)).toBe(true);
      }),
    );
  });

  test.each([
    { why: "another version", value: { ...testSheet(), version: 2 } },
    { why: "a key that is not known", value: { ...testSheet(), titel: "x" } },
    { why: "no stations", value: { ...testSheet(), stations: [] } },
    { why: "a station of no kind", value: only({ ...dialingStation(), kind: "drawing" }) },
    { why: "too many repetitions", value: only(dialingStation({ repetitions: 201 })) },
    {
      why: "a profile off its limits",
      value: only({ ...dialingStation(), profile: { ...shippedProfile("two-wheel"), graduations: 5 } }),
    },
  ])("stops $why, as the parser does", ({ value }) => {
    expect(isValid(value)).toBe(false);
    expect(() => parseSheet(value)).toThrow(DrillError);
  });
});
