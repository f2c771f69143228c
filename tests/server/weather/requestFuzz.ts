import { gzipSync } from "node:zlib";
import fc from "fast-check";
import * as z from "zod/mini";
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { RECORD_SCHEMAS } from "../../../src/records/records";
import { type SentKind, sentRecord } from "../../../src/school/wire/recordsWire";
import { checkSchools } from "../../../src/server/backup/checkDatabase";
import { checkText } from "../../../src/server/backup/commands";
import { anAttempt } from "../../support/logbookRecords";
import type { TestDatabase } from "../support/engines";
import { type TestBench, testBench } from "../support/testBench";
import { type Browser, type TestServer, testSchool, testServer } from "../support/testSchool";
import { anyOfSchema, type JsonSchema } from "./anyOfSchema";

/** A route, as the server describes it. */
interface Route {
  readonly method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  readonly path: string;
  readonly body: JsonSchema | null;
  readonly query: readonly string[];
}

/** A request that is tried. */
interface Tried {
  readonly method: Route["method"];
  readonly url: string;
  readonly body: unknown;
  readonly who: "anyone" | "bench" | "head";
  readonly isPacked: boolean;
}

/** Routes that work out a slow hash, or end what the other requests need: tried less often. */
const SELDOM = /sign-in|sign-out|schools$|instructors$|password|join|pin|invitations|erase|leave/;
const SELDOM_OF = 40;

/** Where records come in, and for how many other routes it is asked: most of what is stored comes in there. */
const RECORDS = "/api/bench/records";
const RECORDS_OF = 6;

/** What is heard until whoever hears it goes away, so no answer of it is whole. */
const UNENDING = ["/api/classes/{classId}/live"];

const openApi = z.object({
  paths: z.record(z.string(), z.record(z.string(), z.looseObject({}))),
});

function routesOf(described: unknown): Route[] {
  const { paths } = openApi.parse(described);
  const ending = Object.entries(paths).filter(([path]) => !UNENDING.includes(path));
  return ending.flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, route]): Route => {
      const { requestBody, parameters = [] } = route as {
        requestBody?: { content: Record<string, { schema: JsonSchema }> };
        parameters?: readonly { in: string; name: string }[];
      };
      return {
        method: method.toUpperCase() as Route["method"],
        path,
        body: requestBody?.content["application/json"]?.schema ?? null,
        query: parameters.filter((one) => one.in === "query").map(({ name }) => name),
      };
    }),
  );
}

/** A part of records, sound ones and spoiled ones, of a person of the bench or not. */
function anyPart(personIds: readonly string[], known: readonly string[]): fc.Arbitrary<unknown> {
  const schema = z.toJSONSchema(sentRecord, { io: "input", unrepresentable: "any" }) as JsonSchema;
  const drawn = anyOfSchema(schema, 8, [...personIds, ...known]);
  const own = fc
    .record({
      id: fc.stringMatching(/^[a-z]{1,3}$/),
      personId: fc.constantFrom(...personIds, "stranger"),
      note: fc.string(),
    })
    .map((fields) => ({ kind: "attempts", record: anAttempt(fields.id, fields) }));
  return fc.record({ sentAt: fc.nat(), records: fc.array(fc.oneof(own, drawn), { maxLength: 6 }) });
}

/** Any request to a route. @param id - what stands in its address */
function requestTo(
  { method, path, body, query }: Route,
  id: fc.Arbitrary<string>,
  part: fc.Arbitrary<unknown>,
  known: readonly string[],
): fc.Arbitrary<Tried> {
  const isRecords = path === RECORDS;
  const drawn = body === null ? fc.constant(undefined) : anyOfSchema(body, 15, known);
  const ends =
    query.length === 0
      ? fc.constant("")
      : fc
          .array(fc.tuple(fc.constantFrom(...query), id), { maxLength: 2 })
          .map(
            (pairs) =>
              `?${new URLSearchParams(pairs.map(([name, value]): [string, string] => [name, value.toWellFormed()]))}`,
          );
  return fc.record({
    method: fc.constant(method),
    url: fc.tuple(fc.array(id, { minLength: 4, maxLength: 4 }), ends).map(([ids, end]) => {
      let k = 0;
      return `${path.replace(/\{\w+\}/g, () => encodeURIComponent((ids[k++] ?? "").toWellFormed()))}${end}`;
    }),
    body: isRecords ? fc.oneof({ weight: 4, arbitrary: part }, { weight: 1, arbitrary: drawn }) : drawn,
    who: path.startsWith("/api/bench")
      ? fc.constantFrom("bench", "bench", "bench", "anyone")
      : fc.constantFrom("head", "head", "head", "bench", "anyone"),
    isPacked: isRecords ? fc.boolean() : fc.constant(false),
  });
}

/** Any request to any route. What each route is asked is described once: describing it takes longer than drawing it. */
function anyRequest(routes: readonly Route[], personIds: readonly string[], known: readonly string[]) {
  const part = anyPart(personIds, known);
  const id = fc.oneof(fc.constantFrom(...known), fc.string({ minLength: 1, maxLength: 30, unit: "binary" }));
  const requests = routes.map((route) => ({ path: route.path, arbitrary: requestTo(route, id, part, known) }));
  const often = requests.filter(({ path }) => !SELDOM.test(path));
  const oneOf = (some: typeof requests) =>
    fc.oneof(...some.map(({ path, arbitrary }) => ({ weight: path === RECORDS ? RECORDS_OF : 1, arbitrary })));
  return fc.oneof({ weight: SELDOM_OF, arbitrary: oneOf(often) }, { weight: 1, arbitrary: oneOf(requests) });
}

/** A school to be asked at, with what the server knows under its ids. */
interface Asked {
  readonly head: Browser;
  readonly bench: TestBench;
}

function ask({ server }: TestServer, { head, bench }: Asked, { method, url, body, who, isPacked }: Tried) {
  const cookies = who === "head" ? head.cookies : bench.cookies;
  const json = body === undefined ? undefined : JSON.stringify(body);
  const payload = isPacked && json !== undefined ? gzipSync(json) : json;
  return server.inject({
    method,
    url,
    ...(payload !== undefined && { payload }),
    ...(who !== "anyone" && { cookies }),
    headers: {
      ...(payload !== undefined && { "content-type": "application/json" }),
      ...(who === "head" && head.headers),
      ...(isPacked && { "content-encoding": "gzip" }),
    },
  });
}

/** Whatever is stored that its schema would not take so. */
async function wronglyStored({ query }: TestDatabase): Promise<string[]> {
  const rows = await query.selectFrom("records").select(["id", "kind", "body"]).execute();
  const wrong = rows.filter(({ kind, body }) => {
    const parsed = RECORD_SCHEMAS[kind as SentKind].safeParse(JSON.parse(body));
    return !parsed.success || canonicalJson(parsed.data) !== body;
  });
  const none = { read: async () => null, write: async () => undefined };
  const checks = await query.transaction().execute((held) => checkSchools(held, none));
  return [
    ...wrong.map(({ kind, id }) => `${kind} ${id} is stored against its schema`),
    ...checks.filter(({ problems }) => problems.length > 0).flatMap(checkText),
  ];
}

/** What came of many requests. */
export interface FuzzResult {
  readonly statuses: Readonly<Record<string, number>>;
  readonly stored: number;
  /** None where all went as it must. */
  readonly problems: readonly string[];
}

/** Requests at one school: afterwards a new one is made, since some of them sign it out. */
const AT_ONE_SCHOOL = 250;

/** Requests at once, as of a class: they get in each other's way, and while one waits for the database the next is read. */
const AT_ONCE = 8;

/** Asks a server for anything and everything. @param hasTime - whether to go on */
export async function fuzz(
  database: TestDatabase,
  runs: number,
  seed: number,
  hasTime = () => true,
): Promise<FuzzResult> {
  const school = await testServer(database, seed);
  const routes = routesOf((await school.server.inject("/api/openapi.json")).json());
  const statuses: Record<string, number> = {};
  const problems: string[] = [];
  for (let done = 0; done < runs && hasTime(); done += AT_ONE_SCHOOL) {
    const head = await testSchool(school, `School ${seed} ${done}`);
    const bench = await testBench(school, head.schoolId, ["Tavro", "Mibsy"]);
    const known = [...bench.people, bench.classId, bench.deviceId, head.schoolId, "a", "ab", "logbook", "attempts"];
    const requests = anyRequest(routes, bench.people, known);
    const asks = async (tried: Tried) => {
      const { statusCode, body } = await ask(school, { head, bench }, tried);
      statuses[statusCode] = (statuses[statusCode] ?? 0) + 1;
      if (statusCode >= 500)
        problems.push(`${statusCode} ${body.slice(0, 200)} for ${JSON.stringify(tried).slice(0, 600)}`);
    };
    const count = Math.min(AT_ONE_SCHOOL, runs - done);
    const drawn = fc.sample(requests, { numRuns: count, seed: seed + done });
    for (let k = 0; k < count; k += AT_ONCE) await Promise.all(drawn.slice(k, k + AT_ONCE).map(asks));
    // Time passes, so that whoever waits after wrong guesses may guess again.
    school.pass(3600_000);
  }
  const { count } = await database.query
    .selectFrom("records")
    .select((of) => of.fn.countAll<number>().as("count"))
    .executeTakeFirstOrThrow();
  problems.push(...(await wronglyStored(database)));
  await school.server.close();
  return { statuses, stored: Number(count), problems };
}
