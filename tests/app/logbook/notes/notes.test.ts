import { expect, test } from "vitest";
import { noteProblem, noteRecord, tagsOf, typedNote } from "../../../../src/app/logbook/notes/notes";
import { decodeTrace } from "../../../../src/records/motion/traceCodec";
import { motionOf } from "../../../../src/store/attemptQueries";
import { wholeLogbook } from "../../../../src/store/wholeLogbook";
import { anAttempt, NOON, openLogbook, SHORT_TRACE } from "../../../support/logbookRecords";

test("tags are typed with commas between, each once", () => {
  expect(tagsOf(" cold hands, retake ,, cold   hands,")).toEqual(["cold hands", "retake"]);
  expect(typedNote({ tags: ["cold hands", "retake"] })).toEqual({ tags: "cold hands, retake", note: "" });
});

test.each([
  ["x".repeat(61), "", /at most 60 letters in a tag, not 61/],
  [Array.from({ length: 21 }, (_, i) => `t${i}`).join(), "", /at most 20 tags, not 21/],
  ["", "x".repeat(2001), /at most 2000 letters in a note/],
])("what no record takes is told", (tags, note, words) => {
  expect(noteProblem({ tags, note })).toMatch(words);
});

test("a note takes the place of what was there, whatever the clock says, and leaves the motion alone", async () => {
  const logbook = await openLogbook();
  const attempt = anAttempt("a", { note: "before" });
  await logbook.save({ kind: "attempts", record: attempt, trace: SHORT_TRACE });
  const noted = await noteRecord(logbook, "attempts", attempt, { tags: "retake", note: "  slow at 92 " }, NOON - 1000);
  expect((await wholeLogbook(logbook)).records.attempts).toMatchObject([
    { ...attempt, tags: ["retake"], note: "slow at 92", updatedAt: NOON + 1 },
  ]);
  expect(await motionOf(logbook, "a")).toEqual(decodeTrace(SHORT_TRACE));
  await noteRecord(logbook, "attempts", noted, { tags: "", note: " " }, NOON);
  const [bare] = (await wholeLogbook(logbook)).records.attempts;
  expect(bare?.tags).toEqual([]);
  expect(bare).not.toHaveProperty("note");
});

test("a sitting is noted in the same way", async () => {
  const logbook = await openLogbook();
  const times = { createdAt: NOON, updatedAt: NOON, startedAt: NOON };
  const sitting = { ...times, id: "s", personId: "tavro", title: "Friday", state: "finished", body: {} } as const;
  await noteRecord(logbook, "sittings", sitting, { tags: "a, b", note: "fair" }, NOON + 5);
  expect((await wholeLogbook(logbook)).records.sittings).toMatchObject([
    { ...sitting, tags: ["a", "b"], note: "fair", updatedAt: NOON + 5 },
  ]);
});
