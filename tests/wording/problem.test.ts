import { describe, expect, test } from "vitest";
import { parseSheet } from "../../src/drill/sheet/parseSheet";
import { parseCombination } from "../../src/lock/combination";
import { parseProfile } from "../../src/lock/profileSchema";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { readSittingRecord } from "../../src/records/sitting/readSittingRecord";

describe("a number that is none", () => {
  test.each([
    { number: null, shown: "null" },
    { number: {}, shown: "{}" },
    { number: "abc", shown: '"abc"' },
    { number: { code: "x", values: null }, shown: '{"code":"x","values":null}' },
    { number: { code: "x", path: [], values: {} }, shown: '{"code":"x","path":[],"values":{}}' },
  ])("is shown as it came: $shown", ({ number, shown }) => {
    const parse = () => parseCombination(shippedProfile("three-wheel"), [1, number, 3]);
    expect(parse).toThrow(`combination[1] (${shown}) is not a number`);
  });
});

describe("a value that is nested too deep to be written", () => {
  const deep: unknown = JSON.parse(`${"[".repeat(200_000)}${"]".repeat(200_000)}`);
  const record = { format: "gatefall-sitting", version: 1, notice: deep };
  test.each([
    { what: "a profile", read: () => parseProfile({ kind: deep }), place: "profile: kind" },
    { what: "a sheet", read: () => parseSheet({ format: deep }), place: "sheet: format" },
    { what: "a record", read: () => readSittingRecord({ record, sha256: "" }), place: "record.notice" },
  ])("leaves $what with its own problem", ({ read, place }) => {
    expect(read).toThrow(new RegExp(`^${place} must be .*, not a value nested too deep to be shown$`));
  });
});
