import type { Role } from "../../../src/school/rights";
import { secretHash } from "../../../src/server/security/secrets";
import { satRecord } from "../../support/satRecord";
import { SAT_SHEET, sentTriesOf } from "../support/satSitting";
import { MORNING } from "../support/testSchool";
import type { Things } from "./things";

/**
 * Whose a route is:
 * - "secret": whoever has the secret in its body, or everybody's;
 * - "own": whoever asks gets what is theirs, and names nothing;
 * - "school": it names something of a school, which whoever is of another is told does not exist;
 * - "one": it names something of one bench or of one instructor, which is nobody else's, not of the same school either.
 */
export type Whose = "secret" | "own" | "school" | "one";

/** A route, who may ask for it, and a request that is good for `things`. */
export interface RightsRow {
  readonly route: string;
  readonly needs: Role;
  readonly whose: Whose;
  /** Sent as JSON with everything but GET; `{}` where it says nothing else. */
  readonly body?: (things: Things) => object;
  /** Its answer does not end: it is tried as everyone else by `live/live.test.ts`. */
  readonly isOpen?: boolean;
}

const HOUR_MS = 3600 * 1000;
const TERMS = { kind: "test", from: MORNING, until: MORNING + HOUR_MS, attempts: 1, people: null, extraTime: [] };
const PASSWORD = "a long password";
const account = ({ login }: Things) => ({ login, name: "New", password: PASSWORD });

const anyone = (route: string, body?: RightsRow["body"]): RightsRow => ({
  route,
  needs: "anyone",
  whose: "secret",
  ...(body && { body }),
});
const row =
  (needs: Role, whose: Whose) =>
  (route: string, body?: RightsRow["body"]): RightsRow => ({ route, needs, whose, ...(body && { body }) });
const bench = row("bench", "own");
const benchThing = row("bench", "one");
const instructor = row("instructor", "own");
const instructorThing = row("instructor", "one");
const schoolThing = row("instructor", "school");
const head = row("head", "own");
const headThing = row("head", "school");

/** Every route of the class server. `:classId` and the like in an address are of the `things` of that name. */
export const RIGHTS: readonly RightsRow[] = [
  anyone("GET /api/openapi.json"),
  anyone("POST /api/schools", (t) => ({ ...account(t), school: "New", token: t.links.school })),
  anyone("POST /api/instructors", (t) => ({ ...account(t), token: t.links.instructor })),
  anyone("POST /api/password", (t) => ({ token: t.links.password, password: PASSWORD })),
  anyone("POST /api/sign-in", () => ({ login: "own", password: PASSWORD })),
  anyone("POST /api/join", (t) => ({ code: t.code, name: "New", bench: "bench" })),
  anyone("POST /api/join/card", (t) => ({ token: t.card, bench: "bench" })),
  anyone("POST /api/join/card-code", (t) => ({ code: t.cardCode, bench: "bench" })),

  bench("GET /api/bench"),
  { ...bench("GET /api/bench/live"), isOpen: true },
  bench("POST /api/bench/records", () => ({ sentAt: 0, records: [] })),
  bench("POST /api/bench/edits", () => ({ edits: [] })),
  bench("POST /api/bench/deletions", () => ({ records: [] })),
  benchThing("GET /api/bench/people/:personId/due"),
  benchThing("POST /api/bench/people/:personId/sittings", (t) => ({
    assignmentId: t.assignmentId,
    sittingId: t.login,
  })),
  benchThing("GET /api/bench/people/:personId/comments"),
  benchThing("POST /api/bench/people/:personId/comments/read"),
  benchThing("GET /api/bench/sittings/:sittingId"),
  benchThing("POST /api/bench/sittings/:sittingId/tries", () => ({ tries: sentTriesOf(satRecord()).slice(0, 1) })),
  benchThing("POST /api/bench/leave", (t) => ({ personId: t.personId })),

  instructor("GET /api/me"),
  instructor("GET /api/me/sign-ins"),
  instructor("POST /api/me/password", () => ({ password: PASSWORD, next: PASSWORD })),
  instructorThing("POST /api/me/sign-ins/:signInId/end"),
  instructor("GET /api/classes"),
  instructor("POST /api/classes", () => ({ name: "New" })),
  schoolThing("POST /api/classes/:classId/name", () => ({ name: "New" })),
  schoolThing("POST /api/classes/:classId/end"),
  schoolThing("GET /api/classes/:classId/codes"),
  schoolThing("POST /api/classes/:classId/codes"),
  schoolThing("POST /api/classes/:classId/codes/revoke", (t) => ({ code: t.code })),
  schoolThing("GET /api/classes/:classId/devices"),
  schoolThing("POST /api/devices/:deviceId/sign-out"),
  instructor("GET /api/people"),
  schoolThing("POST /api/people/:personId", () => ({ version: 1, name: "New" })),
  schoolThing("POST /api/people/:personId/merge", (t) => ({ into: t.otherPersonId })),
  schoolThing("GET /api/classes/:classId/people"),
  schoolThing("POST /api/classes/:classId/people", (t) => ({ name: t.login })),
  schoolThing("POST /api/classes/:classId/people/:personId/leave"),
  schoolThing("POST /api/classes/:classId/people/:personId/card/revoke"),
  schoolThing("POST /api/classes/:classId/cards", (t) => ({ personIds: [t.personId] })),
  schoolThing("POST /api/classes/:classId/roster/preview", () => ({ csv: "New" })),
  schoolThing("POST /api/classes/:classId/roster", (t) => ({
    csv: "",
    seen: secretHash(JSON.stringify([t.classId, []])),
  })),
  schoolThing("GET /api/records/:recordId/signed"),
  // Those that name something and are the asker's own answer of another school's as of what is empty: deletions, assignments, results, comments.
  instructor("POST /api/records/deletions", (t) => ({ records: [t.recordId] })),
  schoolThing("GET /api/people/:personId/export/:form"),
  schoolThing("GET /api/classes/:classId/export/:form"),
  instructor("GET /api/school/keys"),
  schoolThing("POST /api/assignments", (t) => ({ classId: t.classId, sheet: SAT_SHEET, ...TERMS })),
  instructor("GET /api/classes/:classId/assignments"),
  schoolThing("GET /api/assignments/:assignmentId"),
  schoolThing("PUT /api/assignments/:assignmentId", () => ({ version: 1, ...TERMS })),
  schoolThing("POST /api/assignments/:assignmentId/end"),
  schoolThing("POST /api/assignments/:unbegunId/withdraw"),
  schoolThing("GET /api/assignments/:assignmentId/difficulty"),
  instructor("GET /api/classes/:classId/results"),
  schoolThing("GET /api/sittings/:sittingId"),
  instructor("GET /api/sittings/:sittingId/motions"),
  instructor("GET /api/sittings/:sittingId/comments"),
  schoolThing("POST /api/sittings/:sittingId/comments", () => ({ text: "New" })),
  { ...schoolThing("GET /api/classes/:classId/live"), isOpen: true },
  schoolThing("GET /api/classes/:classId/live/:deviceId/attempt"),
  schoolThing("POST /api/classes/:classId/live/:deviceId/lower-hand"),
  schoolThing("GET /api/classes/:classId/desk"),
  schoolThing("GET /api/classes/:classId/desk.csv"),
  instructor("POST /api/sign-out"),

  head("POST /api/school/keys/rotate"),
  headThing("POST /api/people/:personId/erase"),
  head("GET /api/instructors"),
  headThing("POST /api/instructors/:instructorId/disable"),
  headThing("POST /api/instructors/:instructorId/enable"),
  headThing("POST /api/instructors/:instructorId/password-link"),
  head("GET /api/links"),
  head("POST /api/links", () => ({ role: "instructor" })),
  headThing("POST /api/links/:linkId/revoke"),
  head("GET /api/audit"),
];
