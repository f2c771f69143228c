import { describe, expect, it } from "vitest";
import { draftBody, readDraft } from "../../../src/app/keeping/sheets/readDraft";
import { fileText, sheetFromText } from "../../../src/app/keeping/sheets/sheetFile";
import { linkOf, sheetsAddress } from "../../../src/app/keeping/sheets/sheetsAddress";
import { qrPicture } from "../../../src/app/parts/qr/qrPath";
import {
  conditionWords,
  hiddenTrouble,
  jobNote,
  sheetLine,
  spanText,
  stationLine,
} from "../../../src/app/results/sheetWords";
import { dropPlace } from "../../../src/app/sheets/editor/dropPlace";
import { listText, parseList } from "../../../src/app/sheets/editor/fixedList";
import { blankSheet, copiedSheet, copiedStation, newStation } from "../../../src/app/sheets/editor/newSheet";
import { parseRanges, parseWholeRanges, rangesText } from "../../../src/app/sheets/editor/ranges";
import { examplePlan, isDrawn } from "../../../src/app/sheets/preview/previewModel";
import { groupText, tryGroups } from "../../../src/app/sheets/preview/tryGroups";
import { sameSheets } from "../../../src/app/sheets/sameSheets";
import { isLocalPage } from "../../../src/app/sheets/share/localPage";
import { parseSheet } from "../../../src/drill/sheet/parseSheet";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { sheetFingerprint } from "../../../src/drill/sheet/sheetFingerprint";
import { sheetFromLink, sheetToLink } from "../../../src/drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { STATION_KINDS } from "../../../src/drill/sheet/stationKinds";
import { TROUBLE_GUIDE } from "../../../src/handover/trouble/troubleGuide";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import type { SheetRecord } from "../../../src/records/records";
import { changeStation, dialingStation, handoverStation, troubleStation } from "../../support/testSheet";

describe("dropPlace", () => {
  const middles = [10, 30, 50, 70];
  it.each([
    [0, 5, 0],
    [0, 35, 1],
    [0, 99, 3],
    [3, 5, 0],
    [3, 65, 3],
    [2, 31, 2],
    [2, 29, 1],
  ])("puts the one at %i, held at %i, to %i", (from, at, to) => {
    expect(dropPlace(middles, from, at)).toBe(to);
  });
});

describe("combinations as text", () => {
  it("reads back what it writes, on faces numbered either way", () => {
    const left = shippedProfile("three-wheel");
    const right = { ...left, numbersIncrease: "right" as const };
    for (const profile of [left, right, null]) {
      const list = [
        [38, 71, 26],
        [0, 99.5, 50],
      ];
      expect(parseList(listText(list, profile), profile)).toEqual(list);
    }
    expect(listText([[38, 71, 26]], right)).toBe("62-29-74");
  });

  it("takes the marks people use, and leaves what is off the dial to be told", () => {
    const profile = shippedProfile("three-wheel");
    expect(parseList(" 38–71–26 \n\n38, 71 26\n120-x-5", profile)).toEqual([
      [38, 71, 26],
      [38, 71, 26],
      [120, Number.NaN, 5],
    ]);
  });
});

describe("ranges as text", () => {
  it("read back what they write, and leave what is no number to be told", () => {
    expect(rangesText(parseRanges("5, 0–20; 85-99"))).toBe("5, 0-20, 85-99");
    expect(parseWholeRanges("5, 85-99")).toEqual([
      [5, 5],
      [85, 99],
    ]);
    expect(parseRanges("a, 3-")).toEqual([Number.NaN, [3, Number.NaN]]);
    expect(parseRanges(" , ")).toBeUndefined();
    expect(rangesText(undefined)).toBe("");
  });
});

describe("new things", () => {
  it("are sound, and stations have names of their own", () => {
    const sheet = blankSheet();
    expect(newStation("dialing", sheet).title).toBe("Dial the combination 2");
    const [first] = sheet.stations;
    if (first === undefined) throw new Error("a blank sheet has a station");
    const stations = [first, copiedStation(first, sheet)];
    const all = { ...sheet, stations: [...stations, newStation("zeroing", { stations })] };
    expect(parseSheet(all).stations.map(({ id }) => id)).toEqual(["station 1", "station 2", "station 3"]);
  });

  it("a copy has a title that fits", () => {
    expect(copiedSheet({ ...blankSheet(), title: "x".repeat(120) }).title).toHaveLength(120);
  });
});

describe("the preview's plan", () => {
  it("has every try of every shipped sheet, the same each time", () => {
    for (const sheet of SHIPPED_SHEETS) {
      const plan = examplePlan(sheet);
      expect(plan).toEqual(examplePlan(sheet));
      const count = sheet.stations.reduce((sum, { repetitions }) => sum + repetitions, 0);
      expect("tries" in plan && plan.tries.length).toBe(count);
    }
  });

  it("knows when runs differ", () => {
    expect(isDrawn(blankSheet())).toBe(true);
    expect(isDrawn({ ...blankSheet(), seed: 4 })).toBe(false);
  });
});

describe("tryGroups", () => {
  it("joins neighbors only", () => {
    const groups = tryGroups([0, 0, 1, 0].map((station) => ({ station })));
    expect(groups.map(groupText)).toEqual(["Tries 1 to 2", "Try 3", "Try 4"]);
    expect(groups.map(({ station }) => station)).toEqual([0, 1, 0]);
  });
});

describe("qrPicture", () => {
  it("draws a code with four modules of quiet, and none for what no code holds", () => {
    const picture = qrPicture("https://example.org/#/sheets?sheet=s1.abc");
    expect(picture?.path.startsWith("M4 4h1v1h-1z")).toBe(true);
    expect(picture?.size).toBeGreaterThan(21 + 8);
    expect(qrPicture("a".repeat(2953))).not.toBeNull();
    expect(qrPicture("a".repeat(2954))).toBeNull();
  });
});

describe("files and links", () => {
  it("read back what they write", () => {
    for (const sheet of SHIPPED_SHEETS) {
      expect(sheetFromText("a.json", fileText(sheet))).toEqual(sheet);
      const link = linkOf(sheet, "sheets");
      const address = sheetsAddress(new URLSearchParams("hash" in link ? link.hash.split("?")[1] : ""));
      expect(address).toEqual({ shows: "link", sheet });
    }
  });

  it("say what is wrong", () => {
    expect(sheetFromText("a.json", "{")).toBe("a.json was not loaded: it is not JSON. Nothing was changed.");
    expect(sheetFromText("a.json", JSON.stringify({ ...blankSheet(), title: "" }))).toMatch(
      /^a\.json was not loaded: title must be a text/,
    );
    expect(sheetsAddress(new URLSearchParams("sheet=s1.!"))).toMatchObject({ shows: "problem" });
    expect(sheetsAddress(new URLSearchParams("sample=99"))).toMatchObject({ shows: "problem" });
    expect(sheetsAddress(new URLSearchParams("own=abc"))).toEqual({ shows: "own", id: "abc" });
    expect(sheetsAddress(new URLSearchParams())).toEqual({ shows: "shelf" });
  });

  it.each([
    ["http://localhost:4173/", true],
    ["http://127.0.0.1:4173/", true],
    ["http://127.8.9.10/", true],
    ["http://[::1]:4173/", true],
    ["http://bench.localhost/", true],
    ["file:///home/school/index.html", true],
    ["http://192.168.1.20:4173/", false],
    ["http://127.0.0.1.example.org/", false],
    ["https://drills.example.org/", false],
  ])("of a page at %s work on that machine alone: %s", (address, isLocal) => {
    expect(isLocalPage(new URL(address))).toBe(isLocal);
  });

  it("a sheet that was saved before is known again, whatever its title, and an eased one is not", () => {
    const [first] = SHIPPED_SHEETS;
    if (first === undefined) throw new Error("no sheet is shipped");
    const record = (id: string, sheet: Sheet): SheetRecord =>
      ({ id, title: sheet.title, createdAt: 0, updatedAt: 0, body: draftBody(sheet) }) as SheetRecord;
    const eased = { ...first, stations: first.stations.map((one) => ({ ...one, repetitions: one.repetitions + 1 })) };
    const own = [record("a", { ...first, title: "Mine" }), record("b", eased), record("c", { ...first, title: "" })];
    expect(sameSheets(first, own).map(({ id }) => id)).toEqual(["a", "c"]);
    expect(sameSheets(first, [{ ...record("d", first), body: "no sheet" as never }])).toEqual([]);
  });
});

describe("readDraft", () => {
  it("reads what was kept, sound or half done", () => {
    const [station] = blankSheet().stations;
    const half = { ...blankSheet(), title: "", stations: [{ ...station, repetitions: Number.NaN }] };
    expect(readDraft(draftBody({ ...half, stations: half.stations as never }))).toMatchObject({ title: "" });
    expect(readDraft(draftBody(blankSheet()))).toEqual(blankSheet());
  });

  it.each([null, 5, {}, { ...blankSheet(), stations: [null] }, { ...blankSheet(), stations: [{ kind: "dialing" }] }])(
    "gives a sentence for %j",
    (body) => {
      expect(readDraft(body)).toMatch(/^sheet: /);
    },
  );
});

describe("a new station", () => {
  it.each(STATION_KINDS)("to begin with is sound, and is read back as a draft: %s", (kind) => {
    const sheet = { ...blankSheet(), stations: [newStation(kind, { stations: [] })] };
    expect(parseSheet(sheet)).toEqual(sheet);
    expect(readDraft(draftBody(sheet))).toEqual(sheet);
    expect(sheet.stations[0]).toMatchObject({ kind, id: "station 1" });
  });

  it("a handover that begins with its fitting: read back as a draft and by its link, drawn anew, its own fingerprint", () => {
    const sheet = { ...blankSheet(), stations: [handoverStation({ fit: "first" })] };
    const [station] = sheet.stations;
    const onDoor = { ...sheet, stations: [handoverStation()] };
    expect(parseSheet(JSON.parse(JSON.stringify(sheet)))).toEqual(sheet);
    expect(readDraft(draftBody(sheet))).toEqual(sheet);
    expect(sheetFromLink(sheetToLink(sheet))).toEqual(sheet);
    expect([isDrawn(sheet), isDrawn(onDoor)]).toEqual([true, false]);
    expect(sheetFingerprint(sheet)).not.toBe(sheetFingerprint(onDoor));
    expect(station && stationLine(station, "trainee")).toContain(
      "that begins with its fitting, a simulated hand dials",
    );
    expect(station && jobNote(station)).toContain("All parts of the lock are in the tray.");
  });

  it.each([
    ["change", "a change to a new random combination for each try", true],
    ["trouble", "one hidden defect in each try", true],
    ["handover", "a whole handover, you dial", false],
  ] as const)("says what it is and whether it differs from run to run: %s", (kind, words, isNew) => {
    const station = newStation(kind, { stations: [] });
    expect(stationLine(station, "trainee").split(" · ")).toContain(words);
    expect(isDrawn({ ...blankSheet(), stations: [station] })).toBe(isNew);
    expect(isDrawn({ ...blankSheet(), seed: 1, stations: [station] })).toBe(false);
  });
});

describe("words", () => {
  it("say spans, conditions, stations and sheets", () => {
    expect([45, 120, 5400, 3600].map(spanText)).toEqual(["45 s", "2 min", "1 h 30 min", "1 h"]);
    expect(conditionWords({ kind: "lost-motion", size: 0.4, from: 3 })).toBe(
      "the dial has play: 0.4 graduations, from try 3 on",
    );
    const hidden = { ...newStation("zeroing", { stations: [] }), conditions: [{ kind: "noise", size: 0.1 }] as const };
    expect(stationLine(hidden, "instructor")).toContain("readings scatter: 0.1 graduations");
    expect(stationLine(hidden, "trainee")).not.toContain("scatter");
    expect(hiddenTrouble(hidden)).toEqual(["the readings scatter: 0.1 graduations"]);
    expect(stationLine(newStation("dialing", { stations: [] }), "trainee")).toBe(
      "Three-wheel, 100 graduations · 10 tries · a new random combination for each try · full help",
    );
    const unfinished = { ...newStation("dialing", { stations: [] }), repetitions: Number.NaN, timeLimit_s: Number.NaN };
    expect(stationLine(unfinished, "trainee")).toBe(
      "Three-wheel, 100 graduations · a new random combination for each try · full help",
    );
    expect(sheetLine(blankSheet())).toBe("1 station · 10 tries");
  });
});

describe("what a trainee reads of a job before the start", () => {
  it("a change: what the lock comes set to", () => {
    expect(jobNote(changeStation())).toMatch(/^The lock is set to 38–71–26\. /);
  });

  it("trouble and a handover: what ends a try; of a try at a dial nothing", () => {
    expect(jobNote(troubleStation())).toContain("name the defect and its size");
    expect(jobNote(handoverStation())).toContain("Your signature ends the try");
    expect(jobNote(dialingStation())).toBeNull();
  });

  it("which defects may be drawn is for the instructor", () => {
    const station = troubleStation({ pool: ["gates-tight", "dial-heavy"] });
    expect(hiddenTrouble(station)).toEqual([
      `drawn from ${TROUBLE_GUIDE["gates-tight"].title}, ${TROUBLE_GUIDE["dial-heavy"].title}`,
    ]);
    expect(stationLine(station, "trainee")).not.toContain("gates-tight");
  });
});
