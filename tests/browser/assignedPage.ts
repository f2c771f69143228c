import { readFileSync } from "node:fs";
import type * as z from "zod/mini";
import { SHIPPED_QUESTIONS } from "../../src/drill/questions/shippedQuestions";
import type {
  assignmentAnswer,
  assignmentWithSheet,
  classResults,
  commentList,
  difficultyAnswer,
  sittingState,
} from "../../src/school/wire/assignmentsWire";
import { aReceipt } from "../school/aReceipt";
import { dialingStation, testSheet } from "../support/testSheet";

const DAY = 24 * 3600 * 1000;
const SITTING = JSON.parse(readFileSync("tests/fixtures/0.2.0/sitting-passed.json", "utf8"));

const ASSIGNED = { classId: "c", fingerprint: "7F3A-91C2", extraTime: [], people: null, version: 1, createdAt: 0 };

type Assignment = z.output<typeof assignmentAnswer>;
type Results = z.output<typeof classResults>["people"][number]["results"][number];
type Line = NonNullable<Results["best"]>;

const assignmentsAt = (at: number): Assignment[] => [
  {
    ...ASSIGNED,
    id: "a3",
    title: "First lesson: one wheel",
    kind: "practice",
    from: at + 3 * DAY,
    until: at + 4 * DAY,
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
    from: at - DAY,
    until: at + DAY,
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
    from: at - 9 * DAY,
    until: at - 2 * DAY,
    attempts: 1,
    endedAt: at - 3 * DAY,
    begun: 5,
    received: 5,
  },
];

const withSheet = (one: Assignment | undefined): z.output<typeof assignmentWithSheet> => {
  if (one === undefined) throw new Error("there is no such assignment");
  const stations = [
    dialingStation({ id: "dial", title: "Open the lock" }),
    dialingStation({ id: "slow", title: "By feel" }),
  ];
  return { ...one, sheet: testSheet({ title: one.title, stations }) };
};

/** Results of five people, one of each kind. */
function resultsAt(at: number, people: readonly { readonly id: string; readonly name: string }[]) {
  const line = (sittingId: string, part: Partial<Line> = {}): Line => ({
    ...{ sittingId, attempt: 1, begunAt: at, receivedAt: at, outcome: "passed", right: 0.92 },
    ...{ reloads: 0, isLate: false, problems: 0, ...part },
  });
  const of = (assignmentId: string, best: Line | null, latest: Line | null = best, begun = 1): Results => ({
    ...{
      assignmentId,
      best,
      latest,
      others: [],
      begun: latest === null ? 0 : begun,
      received: best === null ? 0 : begun,
      reloads: 0,
    },
  });
  const failed = { outcome: "failed", right: 0.58, attempt: 2 } as const;
  const friday = [
    of("a2", line("s1")),
    of("a2", line("s2", { right: 0.83, reloads: 2, isLate: true }), line("s3", failed), 2),
    of("a2", null, line("s4", { receivedAt: null, outcome: null, right: 0 })),
    of("a2", null, line("s5", { outcome: null, problems: 2, doubted: 1 })),
    of("a2", null),
  ];
  const results = people.map(({ id, name }, k) => ({
    personId: id,
    name,
    results: [
      ...(k === 0 || k === 4 ? [of("a3", null)] : []),
      ...friday.slice(k, k + 1),
      of("a1", line(`z${k}`, { right: 1 - k / 9 })),
    ],
  }));
  return { assignments: assignmentsAt(at), people: results };
}

const DIFFICULTY: z.output<typeof difficultyAnswer> = {
  people: 5,
  stations: [
    {
      item: "dial",
      people: 5,
      share: 0.8,
      interval: { low: 0.38, high: 0.96 },
      discrimination: 0.7,
      discriminationInterval: { low: 0.1, high: 0.93 },
    },
    {
      item: "slow",
      people: 5,
      share: 0.4,
      interval: { low: 0.12, high: 0.77 },
      discrimination: 0.2,
      discriminationInterval: { low: -0.8, high: 0.9 },
    },
  ],
  questions: SHIPPED_QUESTIONS.slice(0, 3).map(({ id }, k) => ({
    ...{ item: id, people: 4 + (k % 2), share: (k + 1) / 4, interval: { low: 0.1 * (k + 1), high: 0.3 * (k + 1) } },
    ...{ discrimination: null, discriminationInterval: null },
  })),
};

/** What a class server answers of assignments, and of what came of them. */
export function answersOfAssignments(at: number, people: readonly { readonly id: string; readonly name: string }[]) {
  const assignments = assignmentsAt(at);
  const state: z.output<typeof sittingState> = {
    ...{ sittingId: "s1", attempt: 1, begunAt: at - DAY / 6, receivedAt: at - DAY / 8, outcome: "passed", right: 1 },
    ...{ reloads: 0, isLate: true, problems: 0, tries: 2 },
    findings: { problems: [], remarks: [{ code: "sent-late", path: [], values: {} }] },
  };
  const comments: z.output<typeof commentList> = {
    comments: [
      {
        ...{ id: "k", sittingId: "s1", title: "Friday test", by: "Orla Finch", at, readAt: null },
        text: "Good hands. Slow down before the last number.",
      },
    ],
  };
  const receipt = aReceipt({ record: { kind: "sittings", id: "s1", sha256: SITTING.sha256 } });
  return {
    "/api/classes/c/assignments": { assignments },
    "/api/assignments/a3": withSheet(assignments[0]),
    "/api/assignments/a2": withSheet(assignments[1]),
    "/api/assignments/a2/difficulty": DIFFICULTY,
    "/api/classes/c/results": resultsAt(at, people),
    "/api/sittings/s1": state,
    "/api/records/s1/signed": { ...SITTING, receipt },
    "/api/sittings/s1/motions": { motions: [] },
    "/api/sittings/s1/comments": comments,
  };
}
