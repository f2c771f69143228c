import { expect, test } from "vitest";
import { suggestionRow } from "../../../../src/app/logbook/progress/suggestionRows";
import { anAttempt } from "../../../support/logbookRecords";

const common = { reason: "Because.", help: "counts" as const, misses: [] };

test.each([
  { exercise: "change", kind: "redo-misses", title: "Repeat: Three-wheel, changing the combination", view: "change" },
  { exercise: "trouble", kind: "go-on", title: "Keep going: Three-wheel, finding a defect", view: "trouble" },
  { exercise: "handover", kind: "refresh", title: "Practice again: Three-wheel, handing over", view: "run" },
] as const)("$exercise leads to its part of the Handover page", ({ exercise, kind, title, view }) => {
  const row = suggestionRow({ ...common, kind, skill: { profileId: "three-wheel", exercise } });
  expect(row).toMatchObject({ title, reason: "Because." });
  expect(row.links.map(({ address }) => address)).toEqual([`#/handover?view=${view}&profile=three-wheel&help=counts`]);
});

test("dialing leads to the bench, misses to the bench with their numbers, or all in one run", () => {
  const skill = { profileId: "three-wheel", exercise: "open" };
  const goOn = suggestionRow({ ...common, kind: "go-on", skill });
  expect(goOn.title).toBe("Keep going: Three-wheel");
  expect(goOn.links.map(({ address }) => address)).toEqual(["#/bench?profile=three-wheel&help=counts"]);
  const redo = suggestionRow({ ...common, kind: "redo-misses", skill, misses: [anAttempt("a", { opened: false })] });
  expect(redo.title).toBe("Repeat your misses: Three-wheel");
  expect(redo.links.map(({ address }) => address)).toEqual([
    "#/bench?profile=three-wheel&combination=29-92-54&help=silent",
    expect.stringMatching(/^#\/sittings\?sheet=s1\./),
  ]);
});

test("a miss leads to a bench fitted as it was, and to none where the bench cannot be fitted so", () => {
  const skill = { profileId: "three-wheel", exercise: "open" };
  const benchesOf = (...conditions: string[]) =>
    suggestionRow({ ...common, kind: "redo-misses", skill, misses: [anAttempt("a", { opened: false, conditions })] })
      .links.map(({ address }) => address)
      .filter((address) => address.startsWith("#/bench"));
  const bench = "#/bench?profile=three-wheel&combination=29-92-54&help=silent";
  expect(benchesOf("heavy dial")).toEqual([`${bench}&dial=heavy`]);
  expect(benchesOf("index offset -0.4", "light dial")).toEqual([`${bench}&dial=light&index=-0.4&play=0`]);
  expect(benchesOf("runout 0.3 40", "catching 2 50 10")).toEqual([
    `${bench}&index=0&play=0&round=0.3,40&catch=2,50,10`,
  ]);
  expect(benchesOf("noise 0.2")).toEqual([]);
  expect(benchesOf("no cutaway")).toEqual([]);
  expect(benchesOf("rain")).toEqual([]);
});
