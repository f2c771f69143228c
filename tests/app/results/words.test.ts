import { describe, expect, test } from "vitest";
import { mergedWords } from "../../../src/app/keeping/mergedWords";
import { inOrderOfNames, nameProblem, newPerson } from "../../../src/app/keeping/people";
import { keepingWords } from "../../../src/app/keeping/stateWords";
import { suggestionRow } from "../../../src/app/logbook/progress/suggestionRows";
import { attemptRowOf, shortTitle } from "../../../src/app/results/attemptRows";
import { sheetFromLink } from "../../../src/drill/sheet/sheetLink";
import { parseProfile } from "../../../src/lock/profileSchema";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { redoSheet } from "../../../src/progress/practiceSheet";
import { anAttempt, aPerson, stopsOf } from "../../support/logbookRecords";

describe("the state of the records", () => {
  test.each([
    { state: { pending: 0, problem: null, promise: null }, says: /^All records are saved .* only\.$/ },
    { state: { pending: 0, problem: null, promise: "kept" as const }, says: /promised not to delete/ },
    { state: { pending: 0, problem: null, promise: "refused" as const }, says: /may delete them/ },
    { state: { pending: 1, problem: "No room.", promise: null }, says: /^1 record waits in this tab\. No room\.$/ },
    { state: { pending: 3, problem: "No room.", promise: null }, says: /^3 records wait in this tab\./ },
  ])("is told: $says", ({ state, says }) => {
    expect(keepingWords(state)).toMatch(says);
  });
});

test("an import tells what it did", () => {
  expect(mergedWords({ added: 0, updated: 0, kept: 0 })).toMatch(/nothing in it/);
  expect(mergedWords({ added: 0, updated: 0, kept: 1 })).toBe("Nothing new: 1 record was here already.");
  expect(mergedWords({ added: 12, updated: 3, kept: 1 })).toBe("12 records added, 3 updated, 1 already here.");
});

describe("names", () => {
  const others = [aPerson("Tavro")];

  test("are refused where they are empty, too long or taken, and else taken", () => {
    expect(nameProblem("  ", others)).toMatch(/Give a name/);
    expect(nameProblem("x".repeat(101), others)).toMatch(/at most 100/);
    expect(nameProblem(" tavro ", others)).toMatch(/here already/);
    expect(nameProblem("Mibsy", others)).toBeNull();
    expect(newPerson("Mibsy", "m", 5)).toMatchObject({ name: "Mibsy", createdAt: 5 });
  });

  test("stand in order, invented ones last", () => {
    const people = [aPerson("b", { isDemo: true }), aPerson("c"), aPerson("a")];
    expect(inOrderOfNames(people).map(({ id }) => id)).toEqual(["a", "c", "b"]);
  });
});

describe("a line of the list", () => {
  test("tells lock, result, faults and stop errors", () => {
    const fault = { code: "ran-past" as const, number: 2, size: 1.5 };
    const row = attemptRowOf(anAttempt("a", { opened: false, faults: [fault], stops: stopsOf(0.25, -0.5, 0) }));
    expect(row).toMatchObject({
      lock: "Three-wheel",
      combination: "29–92–54",
      result: "Did not open",
      faults: "ran past, number 2",
      stops: "+0.3 −0.5 0.0",
      time: "40.0 s",
    });
  });

  test("tells an exercise that draws no bolt by its own words", () => {
    const result = (opened: boolean) => attemptRowOf(anAttempt("a", { exercise: "first 2", opened })).result;
    expect([result(true), result(false)]).toEqual(["Right: first 2", "Not right: first 2"]);
  });

  test("counts what it does not name, and knows a lock that is not here by its id", () => {
    const faults = Array.from({ length: 5 }, () => ({ code: "wrong-way" as const, number: 1, size: 3 }));
    const row = attemptRowOf(anAttempt("a", { profileId: "elsewhere", faults, stops: [] }));
    expect(row.faults).toMatch(/; 3 more$/);
    expect(row).toMatchObject({ lock: "elsewhere", stops: "–" });
  });
});

describe("a suggestion", () => {
  const skill = { profileId: "three-wheel", exercise: "open" };
  const common = { skill, reason: "Because.", help: "counts" as const };

  test("leads to a bench with the help it asks for", () => {
    const { title, links } = suggestionRow({ ...common, kind: "go-on", misses: [] });
    expect(title).toBe("Keep going: Three-wheel");
    expect(links.map(({ address }) => address)).toEqual(["#/bench?profile=three-wheel&help=counts"]);
  });

  test("leads to the very misses, a few at a time", () => {
    const misses = Array.from({ length: 9 }, (_, i) => anAttempt(`a${i}`, { opened: false }));
    const { links } = suggestionRow({ ...common, kind: "redo-misses", misses });
    expect(links.map(({ label }) => label)).toEqual([...Array(5).fill("29–92–54"), "As one drill, 9 tries"]);
    expect(links[0]).toEqual({
      address: "#/bench?profile=three-wheel&combination=29-92-54&help=silent",
      label: "29–92–54",
    });
  });

  test("leads to a bench with the very dial of a miss, and only to a run where the bench has no such setting", () => {
    const heavy = anAttempt("a", { opened: false, conditions: ["heavy dial"] });
    const noisy = anAttempt("b", { opened: false, conditions: ["noise 0.4"] });
    const partly = anAttempt("c", { opened: false, exercise: "first 2" });
    const { links } = suggestionRow({ ...common, kind: "redo-misses", misses: [heavy, noisy, partly] });
    expect(links.map(({ label }) => label)).toEqual(["29–92–54", "As one drill, 3 tries"]);
    expect(links[0]?.address).toBe("#/bench?profile=three-wheel&combination=29-92-54&help=silent&dial=heavy");
    expect(sheetFromLink(links[1]?.address.split("sheet=")[1] ?? "")).toEqual(redoSheet([heavy, noisy, partly]));
  });

  test("leads nowhere for a lock that is not here", () => {
    const { links } = suggestionRow({ ...common, skill: { ...skill, profileId: "x" }, kind: "refresh", misses: [] });
    expect(links).toEqual([]);
  });
});

test("a lock is called by its short name where there is little room, else by its whole title, else by its id", () => {
  const profile = shippedProfile("three-wheel");
  const { short: _, ...unnamed } = profile;
  expect(shortTitle(profile, profile.id)).toBe("Three-wheel");
  expect(shortTitle(parseProfile({ ...unnamed, title: "Shop lock, the old one" }), "shop")).toBe(
    "Shop lock, the old one",
  );
  expect(shortTitle(parseProfile({ ...unnamed, title: "Shop lock, the old one", short: "Shop" }), "shop")).toBe("Shop");
  expect(shortTitle(null, "shop")).toBe("shop");
});
