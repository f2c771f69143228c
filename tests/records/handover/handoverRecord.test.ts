import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { RunError } from "../../../src/handover/run/rules/runError";
import { formSentence } from "../../../src/records/handover/formWords";
import { handoverRecord, parseHandoverRecord } from "../../../src/records/handover/handoverRecord";
import { isCalendarDate, nextChangeDue } from "../../../src/records/handover/nextChange";
import { recordProblems } from "../../../src/records/handover/recordForm";
import { recordHash } from "../../../src/records/hashedRecord";
import { RECORD_FACTS as FACTS, RECORD_FORM as FORM } from "../../support/savedHandoverRecord";

const SECRETS = [{ combination: [38, 71, 26], graduations: 100 }];

describe("the next change", () => {
  test.each([
    ["2026-11-26", "2027-11-26"],
    ["2024-02-29", "2025-02-28"],
    ["2023-02-28", "2024-02-28"],
    ["2027-12-31", "2028-12-31"],
  ])("after %s is due by %s", (date, due) => {
    expect(nextChangeDue(date)).toBe(due);
  });

  test("is due on a day that exists, a year on and never later, by the platform's own calendar", () => {
    const day = fc
      .date({ min: new Date("1900-01-01"), max: new Date("2199-12-31"), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10));
    fc.assert(
      fc.property(day, (date) => {
        const days = (Date.parse(nextChangeDue(date)) - Date.parse(date)) / 86_400_000;
        expect(isCalendarDate(date) && isCalendarDate(nextChangeDue(date))).toBe(true);
        expect([365, 366]).toContain(days);
        expect(nextChangeDue(date).slice(0, 7)).toBe(`${Number(date.slice(0, 4)) + 1}${date.slice(4, 7)}`);
      }),
    );
  });

  test.each(["2026-02-29", "2026-13-01", "2026-04-31", "26.11.2026", "", "2100-02-29", "2026-11-00"])(
    '"%s" is no date',
    (text) => {
      expect(isCalendarDate(text)).toBe(false);
    },
  );
});

describe("the form", () => {
  test("is fit to be written when all is told but remarks", () => {
    expect(recordProblems(FORM, SECRETS, false)).toEqual([]);
  });

  test("refuses the combination in any free field, says where and why", () => {
    for (const field of [
      "technician",
      "second",
      "takenOverBy",
      "authorizedBy",
      "lock",
      "door",
      "holders",
      "remarks",
    ] as const) {
      const [problem] = recordProblems({ ...FORM, [field]: "it is 38 71 26" }, SECRETS, false);
      expect(problem).toMatchObject({ code: "combination", path: [field] });
      expect(problem && formSentence(problem)).toMatch(
        /^All numbers of the combination are .* never what it is\. Take out one/,
      );
    }
  });

  test("refuses it spread over fields", () => {
    const [problem] = recordProblems(
      { ...FORM, technician: "P. 38", holders: "71 of us", remarks: "26" },
      SECRETS,
      false,
    );
    expect(problem).toMatchObject({ code: "combination-spread", path: [] });
  });

  test("names every empty field, and a date that is none", () => {
    const problems = recordProblems({ ...FORM, technician: " ", holders: "", date: "soon" }, SECRETS, false);
    expect(problems.map(({ code, path }) => [code, ...path])).toEqual([
      ["empty", "technician"],
      ["empty", "holders"],
      ["no-date", "date"],
    ]);
  });

  test("wants to know who authorized a height out of range, and only then", () => {
    const problems = recordProblems(FORM, SECRETS, true);
    expect(problems.map(({ code, path }) => [code, ...path])).toEqual([["empty", "authorizedBy"]]);
    expect(recordProblems({ ...FORM, authorizedBy: "E. Quill" }, SECRETS, true)).toEqual([]);
  });
});

describe("the record", () => {
  test("tells the proofs, the next change and whose hand it was, and no combination", () => {
    const record = handoverRecord(FACTS);
    expect(record).toMatchObject({
      nextChangeDue: "2027-11-26",
      faults: 0,
      isHandsOff: false,
      takenOverBy: "D. Mallow",
    });
    expect(record.proofs.every(({ isShown }) => isShown)).toBe(true);
    expect(record.proofs.length).toBe(16);
    expect(record.notice).toBe("Practice result, not a certificate.");
  });

  test("is read back as it was written, and its hash tells any change", async () => {
    const record = handoverRecord(FACTS);
    const read = parseHandoverRecord(JSON.parse(JSON.stringify(record)));
    expect(read).toEqual(record);
    const hash = recordHash(record);
    expect(recordHash(read)).toBe(hash);
    expect(recordHash({ ...read, technician: "X" })).not.toBe(hash);
  });

  test("that is none is refused, naming the field", () => {
    const record = handoverRecord(FACTS);
    expect(() => parseHandoverRecord({ ...record, date: "2026-02-30" })).toThrow(RunError);
    expect(() => parseHandoverRecord({ ...record, date: "2026-02-30" })).toThrow(/record: date must be a date/);
    expect(() => parseHandoverRecord(7)).toThrow(/record: this must be an object/);
  });
});
