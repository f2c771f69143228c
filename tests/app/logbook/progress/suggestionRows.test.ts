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
