import type { Page } from "@playwright/test";
import type * as z from "zod/mini";
import { classTable } from "../../src/progress/classTable";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import type { assignmentList, assignmentWithSheet } from "../../src/school/wire/assignmentsWire";
import type { classList, codeList } from "../../src/school/wire/classWire";
import type { deskAnswer } from "../../src/school/wire/deskWire";
import type { signedIn } from "../../src/school/wire/peopleWire";
import type { madeCards, roster, schoolPeople } from "../../src/school/wire/rosterWire";
import { testSheet } from "../support/testSheet";

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
  cards: NAMES.map((name, k) => ({ personId: `p${k}`, name, token: String(k).repeat(43) })),
};

const demo = demoLogbook(7, AT);
const desk: z.input<typeof deskAnswer> = { ...classTable([demo], undefined, { now: AT }), hands: ["screen"] };
const ASSIGNED = { classId: "c", fingerprint: "7F3A-91C2", extraTime: [], people: null, version: 1, createdAt: AT };
const assignments: z.output<typeof assignmentList> = {
  assignments: [
    {
      ...ASSIGNED,
      id: "a3",
      title: "First lesson: one wheel",
      kind: "practice",
      from: AT + 3 * DAY,
      until: AT + 4 * DAY,
      attempts: null,
      people: ["p0", "p4"],
      endedAt: null,
      begun: 0,
      received: 0,
    },
    {
      ...ASSIGNED,
      id: "a2",
      title: "Friday test",
      kind: "test",
      from: AT - DAY,
      until: AT + DAY,
      attempts: 2,
      extraTime: [{ personId: "p2", percent: 50 }],
      endedAt: null,
      begun: 4,
      received: 3,
    },
    {
      ...ASSIGNED,
      id: "a1",
      title: "Set the zero",
      kind: "test",
      from: AT - 9 * DAY,
      until: AT - 2 * DAY,
      attempts: 1,
      endedAt: AT - 3 * DAY,
      begun: 5,
      received: 5,
    },
  ],
};
const withSheet = (k: number): z.output<typeof assignmentWithSheet> => {
  const one = assignments.assignments[k];
  if (one === undefined) throw new Error(`there is no assignment ${k}`);
  return { ...one, sheet: testSheet({ title: one.title }) };
};

const ANSWERS: Readonly<Record<string, unknown>> = {
  "/api/me": me,
  "/api/classes": classes,
  "/api/classes/c/codes": codes,
  "/api/classes/c/people": people,
  "/api/people": everybody,
  "/api/classes/c/cards": cards,
  "/api/classes/c/desk": desk,
  "/api/classes/c/assignments": assignments,
  "/api/assignments/a3": withSheet(0),
  "/api/assignments/a2": withSheet(1),
};

/** Opens an address as an instructor who is signed in at a class server, which always answers the same. */
export async function openClassroom(page: Page, address: string): Promise<void> {
  await page.context().route(
    (url) => url.pathname === "/",
    async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: (await response.text()).replace("<head>", MARK) });
    },
  );
  await page.context().route("**/api/**", (route) => {
    const json = ANSWERS[new URL(route.request().url()).pathname];
    return json === undefined ? route.abort() : route.fulfill({ json });
  });
  // Whether something is open now is told by this clock.
  await page.clock.setFixedTime(AT);
  await page.goto(address);
}
