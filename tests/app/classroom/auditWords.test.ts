import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type AuditEntry, auditSentence } from "../../../src/app/classroom/audit/auditWords";

const NAMES = new Map([
  ["c", "Fitters 1"],
  ["p", "Ada"],
  ["i", "Bram Ellery"],
]);
const entry = (action: string, ofId: string, details: AuditEntry["details"] = {}): AuditEntry => ({
  id: 1,
  at: 0,
  by: { id: "o", name: "Orla Finch" },
  action,
  ofId,
  details,
});

test.each<readonly [action: string, ofId: string, details: AuditEntry["details"], says: string]>([
  ["class.renamed", "c", { from: "Fitters", to: "Fitters 1" }, "renamed the class Fitters to Fitters 1"],
  ["cards.made", "c", { personIds: ["p"] }, "made 1 join card for Fitters 1"],
  [
    "class.roster-taken",
    "c",
    { added: 2, matched: 1, refused: 0 },
    "put names from a file on the roster of Fitters 1: 2 new, 1 known, 0 left out",
  ],
  ["person.added", "p", { classId: "c" }, "put Ada on the roster of Fitters 1"],
  ["person.changed", "p", { fields: ["name", "extraTime"] }, "changed Ada: the name, the extra time"],
  ["person.merged", "gone", { into: "p" }, "merged two entries of one person: Ada"],
  ["person.erased", "gone", { records: 12 }, "erased a person’s data with 12 records"],
  ["assignment.made", "a", { classId: "c", title: "Friday test" }, "assigned “Friday test” to Fitters 1"],
  ["instructor.disabled", "i", {}, "blocked Bram Ellery from signing in"],
  ["person.added", "gone", { classId: "gone" }, "put (not there any more) on the roster of (not there any more)"],
  ["door.opened", "x", {}, "made a change that this version of the app has no words for (door.opened)"],
])("%s of %s reads as a sentence", (action, ofId, details, says) => {
  expect(auditSentence(entry(action, ofId, details), NAMES)).toBe(`Orla Finch ${says}.`);
});

test("every change that the server writes down has words", () => {
  const folder = join(import.meta.dirname, "../../../src/server");
  const texts = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".ts"))
    .map((file) => readFileSync(join(folder, file), "utf8"));
  const actions = new Set(
    texts.flatMap((text) => [...text.matchAll(/"([a-z]+\.[a-z-]+)"/g)].map(([, action = ""]) => action)),
  );
  // Whatever is written goes through `writeAudit`, so that it is seen here.
  const besides = texts.filter((text) => text.includes('insertInto("audit")'));
  expect(besides).toHaveLength(1);
  const written = [...actions].filter((action) =>
    texts.some(
      (text) =>
        text.includes(`action: "${action}"`) || text.includes(`? "${action}" :`) || text.includes(`: "${action}" }`),
    ),
  );
  expect(written.length).toBeGreaterThan(20);
  const without = written.filter((action) => auditSentence(entry(action, "c"), NAMES).includes("no words for"));
  expect(without).toEqual([]);
});
