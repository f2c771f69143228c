import { createHash, webcrypto } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { DrillError } from "../../../src/drill/drillError";
import { markingFigures } from "../../../src/drill/marking/markingFigures";
import { tryChance } from "../../../src/drill/sitting/tryChance";
import { drawInspection } from "../../../src/fitting/inspect/drawFit";
import { stationTrouble } from "../../../src/handover/trouble/stationTrouble";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { recordHash } from "../../../src/records/hashedRecord";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { recordSchema } from "../../../src/records/sitting/recordSchema";
import {
  NOTICE,
  profileHashes,
  type SittingFacts,
  type SittingRecord,
  sittingRecord,
} from "../../../src/records/sitting/sittingRecord";
import OLD from "../../fixtures/0.2.0/sitting-passed.json" with { type: "json" };
import { checkedInWords } from "../../support/checkedInWords";
import {
  changeStation,
  dialingStation,
  fittingStation,
  handoverStation,
  inspectionStation,
  testSheet,
  troubleStation,
  zeroingStation,
} from "../../support/testSheet";
import {
  changeTry,
  fittingTry,
  handoverTry,
  inspectionTry,
  triesRight,
  troubleTry,
  zeroingTry,
} from "../../support/testTries";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

const FACTS: SittingFacts = {
  sheet: testSheet({ stations: [dialingStation({ repetitions: 5, passMarks: { firstTime: 4 } })] }),
  seed: 7,
  appVersion: "0.1.0",
  person: "Pelline",
  startedAt: "2026-11-25T08:00:00.000Z",
  worked_ms: 180_000,
  pauses: 0,
  interruptions: 1,
  tries: triesRight(4, 5),
  answers: [],
  ended: "finished",
};

const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value));

describe("canonical JSON", () => {
  // RFC 8785, 3.2.3: its own example of sorting, by UTF-16 code units.
  test("sorts the keys of RFC 8785's example as it does", () => {
    const text = canonicalJson({
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis",
    });
    expect(Object.values(JSON.parse(text))).toHaveLength(7);
    expect([...text.matchAll(/:"([^"]+)"/g)].map(([, name]) => name)).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji: Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  // RFC 8785, 3.2.2: its own example of numbers and literals.
  test("writes numbers and literals as RFC 8785's example does", () => {
    const value = {
      numbers: [Number("333333333.33333329"), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      literals: [null, true, false],
    };
    expect(canonicalJson(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]}',
    );
  });

  const shuffledKeys = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(shuffledKeys);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value)
        .reverse()
        .map(([key, one]) => [key, shuffledKeys(one)]),
    );
  };

  test("is the same whatever the order of keys, and reads back as the same", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalJson(value);
        expect(canonicalJson(shuffledKeys(value))).toBe(text);
        expect(canonicalJson(JSON.parse(text))).toBe(text);
        expect(JSON.stringify(JSON.parse(text))).toHaveLength(text.length);
      }),
    );
  });

  test.each([[NaN], [Infinity], [undefined], [() => 1], [new Date(0)], [{ a: [1n] }]])("%s cannot be held", (value) => {
    expect(() => canonicalJson(value)).toThrow(value instanceof Object && "a" in value ? TypeError : DrillError);
  });
});

describe("a record", () => {
  test("is plain JSON with its seed, version, profile hashes, marks and notice", async () => {
    const record = sittingRecord(FACTS);
    expect(plain(record)).toEqual(record);
    expect(record).toMatchObject({ seed: 7, appVersion: "0.1.0", notice: NOTICE, marking: { verdict: "pass" } });
    expect(record.notice).toContain("not a certificate");
    expect(record.profileHashes).toEqual([expect.stringMatching(/^[0-9a-f]{64}$/)]);
  });

  test("knows the shipped locks by the hashes that version 0.2.0 gave them: what they are called does not count", () => {
    const stations = [dialingStation({ profile: "three-wheel" }), dialingStation({ profile: "dial-encoder" })];
    expect(profileHashes(testSheet({ stations }))).toEqual(OLD.record.profileHashes);
    const own = dialingStation({ profile: { ...shippedProfile("three-wheel"), short: "Ours" } });
    expect(profileHashes(testSheet({ stations: [own] }))).toEqual(OLD.record.profileHashes.slice(0, 1));
  });

  test("has one hash, by whoever makes it, and whatever the order of its keys", async () => {
    const record = sittingRecord(FACTS);
    const hash = recordHash(record);
    const digest = await webcrypto.subtle.digest("SHA-256", new TextEncoder().encode(canonicalJson(record)));
    expect(Buffer.from(digest).toString("hex")).toBe(hash);
    const reversed = Object.fromEntries(Object.entries(record).reverse()) as unknown as SittingRecord;
    expect(recordHash(reversed)).toBe(hash);
  });

  test("checks out after a trip through a file, the hash typed in capitals", async () => {
    const record = sittingRecord(FACTS);
    const hash = recordHash(record);
    expect(checkedInWords(checkRecord(plain(record), ` ${hash.toUpperCase()} `, "0.1.0"))).toEqual({
      isUnchanged: true,
      isMarkedRight: true,
      hasSameProfiles: true,
      fitsSheet: true,
      problems: [],
      unheld: [],
      unchecked: ["There are no recordings in this record: its openings were not replayed."],
      replayed: 0,
    });
  });

  test("of changes, trouble, handovers and fittings checks out, and shows a number that was changed", async () => {
    const trouble = troubleStation({ repetitions: 2, passMarks: { sizeError: 0.5 } });
    const drawn = (index: number) => {
      const { task } = stationTrouble(shippedProfile("three-wheel"), trouble, tryChance(FACTS.seed, index));
      return { condition: task.trouble.kind, named: task.trouble.kind };
    };
    const stations = [
      changeStation({
        repetitions: 1,
        combinations: { policy: "fixed", list: [[71, 36, 59]] },
        passMarks: { right: 1 },
      }),
      trouble,
      handoverStation({ repetitions: 1, passMarks: { clean: 1 } }),
      fittingStation({ repetitions: 1, passMarks: { right: 1, faults: 0 } }),
    ];
    const tries = [
      changeTry({ faults: [{ code: "number-set-off", size: 0.8 }] }),
      troubleTry({ station: 1, sizeError: 0.25, ...drawn(1) }),
      troubleTry({ station: 1, repetition: 2, sizeError: -0.25, ...drawn(2) }),
      handoverTry({ station: 2 }),
      fittingTry({ station: 3 }),
    ];
    const record = sittingRecord({ ...FACTS, sheet: testSheet({ stations }), tries, worked_ms: 2_000_000 });
    const hash = recordHash(record);
    expect(record.marking.verdict).toBe("pass");
    expect((await checkRecord(plain(record), hash, "0.1.0")).problems).toEqual([]);
    expect(recordSchema.safeParse(plain(record)).error).toBeUndefined();
    const forged = { ...record, tries: record.tries.with(3, handoverTry({ station: 2, missing: ["record"] })) };
    expect(await checkRecord(forged, hash, "0.1.0")).toMatchObject({
      isUnchanged: false,
      isMarkedRight: false,
    });
  });

  test("of a fit that was judged has the faults that its seed leads to, or says that it has others", async () => {
    const stations = [inspectionStation({ repetitions: 2, passMarks: { right: 2, mistakes: 0 } })];
    const tries = [1, 2].map((repetition) => {
      const { faults } = drawInspection(shippedProfile("three-wheel"), tryChance(FACTS.seed, repetition - 1));
      return inspectionTry({ repetition, faults, named: faults });
    });
    const made = (own: typeof tries) =>
      sittingRecord({ ...FACTS, sheet: testSheet({ stations }), tries: own, worked_ms: 500_000 });
    const found = (record: SittingRecord, version = "0.1.0") =>
      checkedInWords(checkRecord(plain(record), recordHash(record), version));
    const record = made(tries);
    expect(record.marking.verdict).toBe("pass");
    expect(found(record).problems).toEqual([]);
    expect(recordSchema.safeParse(plain(record)).error).toBeUndefined();
    const easier = made(
      tries.map((one) => ({ ...one, faults: ["cover-off"] as const, named: ["cover-off"] as const })),
    );
    const says = /^Try 1 has other faults than the fit that sheet and seed lead to/;
    expect(found(easier).problems.filter((one) => says.test(one))).toHaveLength(1);
    expect(found(easier, "9.9.9")).toMatchObject({
      problems: [],
      unheld: expect.arrayContaining([expect.stringMatching(says)]),
    });
  });

  test("made before there were changes and handovers is marked to the same figures", async () => {
    const every = { firstTime: 4, claim: { rate: 0.9, confidence: 0.9 }, stopErrorBias: 0.5, stopErrorSpread: 0.5 };
    const stations = [
      dialingStation({ repetitions: 5, passMarks: { ...every, faultyTries: 1, meanTime_s: 60 } }),
      zeroingStation({ passMarks: { zeroed: 2, refused: 3, meanTime_s: 200 } }),
    ];
    const tries = [...triesRight(4, 5), zeroingTry({ station: 1 })];
    const answers = [{ questionId: "zeroing-01", choice: 3, isRight: true }];
    const facts = { ...FACTS, sheet: testSheet({ stations }), tries, answers, ended: "broken-off" as const };
    const { sheetSha256: _since, marking, ...before } = sittingRecord(facts);
    // Made by the version before, from the same facts. Since then came the sheet's fingerprint, and other words for the
    // same marks.
    expect(await sha256(canonicalJson({ ...before, marking: markingFigures(marking) }))).toBe(
      "6b86796e12701ac5785df7a37e8ef324e0b0c9b49d1e82611d342930a278e2c9",
    );
  });

  test("any number changed anywhere shows", async () => {
    const record = sittingRecord(FACTS);
    const hash = recordHash(record);
    const text = JSON.stringify(record);
    const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
    fc.assert(
      fc.property(fc.constantFrom(...digits), (at) => {
        const other = text[at] === "9" ? "8" : "9";
        const changed = JSON.parse(`${text.slice(0, at)}${other}${text.slice(at + 1)}`) as SittingRecord;
        const isSame = canonicalJson(changed) === canonicalJson(record);
        expect(recordHash(changed) === hash).toBe(isSame);
      }),
      { numRuns: 200 },
    );
  });

  test("marks that do not follow from the tries show, even under a fresh hash", async () => {
    const record = sittingRecord({ ...FACTS, tries: triesRight(3, 5) });
    expect(record.marking.verdict).toBe("fail");
    const forged = { ...record, marking: { ...record.marking, verdict: "pass" as const } };
    const check = await checkRecord(forged, recordHash(forged), "0.1.0");
    expect([check.isUnchanged, check.isMarkedRight]).toEqual([true, false]);
    expect(checkedInWords(check).problems).toEqual([
      "The marks do not follow from the tries on record, by the rules of this version.",
    ]);
  });

  test("a lock that is no longer the same shows", async () => {
    const record = { ...sittingRecord(FACTS), profileHashes: ["0".repeat(64)] };
    const check = await checkRecord(record, recordHash(record), "0.1.0");
    expect([check.isUnchanged, check.hasSameProfiles]).toEqual([true, false]);
  });
});
