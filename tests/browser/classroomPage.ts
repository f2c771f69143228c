import type { Page } from "@playwright/test";
import type * as z from "zod/mini";
import { classTable } from "../../src/progress/classTable";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import type { SchoolKeys } from "../../src/school/signing/schoolKeys";
import type { auditLog } from "../../src/school/wire/auditWire";
import type { classList, codeList } from "../../src/school/wire/classWire";
import type { deskAnswer } from "../../src/school/wire/deskWire";
import type { instructorList } from "../../src/school/wire/instructorsWire";
import type { signedIn } from "../../src/school/wire/peopleWire";
import type { madeCards, roster, schoolPeople } from "../../src/school/wire/rosterWire";
import { answersOfAssignments } from "./assignedPage";

const MARK = '<head><meta name="class-server" content="/api">';
const AT = Date.UTC(2026, 2, 2, 8);
const DAY = 24 * 3600 * 1000;

const NAMES = ["Bo Ellery", "Jorrel", "Mibsy Rowe", "Ondrell", "Tavro"];

const me: z.output<typeof signedIn> = {
  school: { id: "s", name: "Millbrook Trades" },
  instructor: { id: "i", name: "Orla Finch", role: "head" },
  csrf: "csrf",
  expiresAt: AT + DAY,
};
const classes: z.output<typeof classList> = {
  classes: [
    { id: "c", name: "Fitters 1", createdAt: AT - DAY, endedAt: null, people: NAMES.length },
    { id: "d", name: "Evening course", createdAt: AT - 9 * DAY, endedAt: null, people: 1 },
    { id: "e", name: "Fitters of last year", createdAt: AT - 300 * DAY, endedAt: AT - 90 * DAY, people: 11 },
  ],
};
const codes: z.output<typeof codeList> = { codes: [{ code: "XK4M-7PQA", createdAt: AT, expiresAt: AT + DAY / 2 }] };
const people: z.output<typeof roster> = {
  people: NAMES.map((name, k) => ({
    id: `p${k}`,
    name,
    extraTime: k === 2 ? 25 : 0,
    hasPin: k % 2 === 0,
    isByCode: k === 4,
    hasCard: k < 3,
    version: 1,
    joinedAt: AT,
  })),
};
const everybody: z.output<typeof schoolPeople> = {
  people: people.people.map(({ id, name, extraTime, version }, k) => ({
    ...{ id, name, extraTime, version },
    classIds: k === 4 ? [] : ["c"],
  })),
};
const cards: z.output<typeof madeCards> = {
  class: { id: "c", name: "Fitters 1" },
  cards: NAMES.map((name, k) => ({
    personId: `p${k}`,
    name,
    token: String(k).repeat(43),
    code: `XK4M-7PQA-${"ACDEF"[k]}WRT-9HJ3`,
  })),
};

const demo = demoLogbook(7, AT);
const desk: z.input<typeof deskAnswer> = { ...classTable([demo], undefined, { now: AT }), hands: ["screen"] };
const instructors: z.output<typeof instructorList> = {
  instructors: [{ id: "i", name: "Orla Finch", login: "orla", role: "head", createdAt: AT - DAY, disabledAt: null }],
};
const changed = (id: number, action: string, ofId: string, details: Readonly<Record<string, unknown>> = {}) => ({
  ...{ id, action, ofId, details, at: AT - (9 - id) * 3_600_000 },
  by: { id: "i", name: "Orla Finch" },
});
const audit: z.output<typeof auditLog> = {
  entries: [
    changed(8, "comment.made", "k"),
    changed(7, "assignment.ended", "a1", { title: "Set the zero" }),
    changed(6, "assignment.made", "a2", { classId: "c", title: "Friday test" }),
    changed(5, "person.changed", "p2", { fields: ["extraTime"] }),
    changed(4, "class.roster-taken", "c", { added: 3, matched: 1, refused: 0 }),
    changed(3, "person.added", "p0", { classId: "c" }),
    changed(2, "class.code-made", "c"),
    changed(1, "class.made", "c"),
  ],
  isMore: true,
};

const keys: SchoolKeys = {
  format: "gatefall-school-keys",
  version: 1,
  school: { id: "s", name: "Millbrook Trades" },
  keys: [
    {
      fingerprint: "7Q2KM-4XZ9T-W0E5R-HN3VB-C8JYP",
      publicKey: "1".repeat(64),
      createdAt: AT - 90 * DAY,
      retiredAt: AT - DAY,
    },
    { fingerprint: "M1TGA-93KDS-QXR2C-6FWV8-0ZBEN", publicKey: "2".repeat(64), createdAt: AT - DAY, retiredAt: null },
  ],
};

const ANSWERS: Readonly<Record<string, unknown>> = {
  "/api/me": me,
  "/api/classes": classes,
  "/api/classes/c/codes": codes,
  "/api/classes/c/people": people,
  "/api/people": everybody,
  "/api/classes/c/cards": cards,
  "/api/classes/c/desk": desk,
  ...answersOfAssignments(AT, people.people),
  "/api/audit": audit,
  "/api/school/keys": keys,
  "/api/instructors": instructors,
};

/** Opens an address as an instructor who is signed in at a class server, which always answers the same. @param more - further answers, by their paths */
export async function openClassroom(
  page: Page,
  address: string,
  more: Readonly<Record<string, unknown>> = {},
): Promise<void> {
  await page.context().route(
    (url) => url.pathname === "/",
    async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: (await response.text()).replace("<head>", MARK) });
    },
  );
  await page.context().route("**/api/**", (route) => {
    const path = new URL(route.request().url()).pathname;
    const json = more[path] ?? ANSWERS[path];
    return json === undefined ? route.abort() : route.fulfill({ json });
  });
  // Whether something is open now is told by this clock.
  await page.clock.setFixedTime(AT);
  await page.goto(address);
}
