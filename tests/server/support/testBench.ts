import { gzipSync } from "node:zlib";
import { COOKIES } from "../../../src/server/http/whoAsks";
import { newSecret, newServerId, secretHash } from "../../../src/server/security/secrets";
import type { TestServer } from "./testSchool";

type Answer = Awaited<ReturnType<TestServer["server"]["inject"]>>;

/** A bench that joined a class, and who did so at it. */
export interface TestBench {
  readonly cookies: Record<string, string>;
  readonly deviceId: string;
  readonly classId: string;
  /** Ids of the people, in the order of their names. */
  readonly people: readonly string[];
  /** Hands a part of records in. */
  readonly send: (records: readonly unknown[], sentAt?: number) => Promise<Answer>;
}

/** A bench of a school, whose people joined at it, as rows: how they join is tested elsewhere. */
export async function testBench(
  { server, world }: TestServer,
  schoolId: string,
  names: readonly string[] = ["Tavro"],
): Promise<TestBench> {
  const { database } = world;
  const now = world.now();
  const [classId, deviceId, secret] = [newServerId(world), newServerId(world), newSecret(world)];
  const people = names.map(() => newServerId(world));
  const made = { school_id: schoolId, created_at: now };
  await database
    .insertInto("classes")
    .values({ ...made, id: classId, name: "First years" })
    .execute();
  await database
    .insertInto("devices")
    .values({ ...made, id: deviceId, class_id: classId, token_hash: secretHash(secret), name: "Bench", seen_at: now })
    .execute();
  for (const [k, id] of people.entries()) {
    const row = { ...made, id, name: names[k] ?? "", extra_time: 0, updated_at: now, version: 1 };
    await database.insertInto("people").values(row).execute();
    const place = { school_id: schoolId, person_id: id, joined_at: now };
    await database
      .insertInto("device_people")
      .values({ ...place, device_id: deviceId })
      .execute();
    await database
      .insertInto("class_people")
      .values({ ...place, class_id: classId })
      .execute();
  }
  const cookies = { [COOKIES.bench]: secret };
  return {
    cookies,
    deviceId,
    classId,
    people,
    send: async (records, sentAt = now) =>
      server.inject({
        method: "POST",
        url: "/api/bench/records",
        cookies,
        headers: { "content-type": "application/json", "content-encoding": "gzip" },
        payload: gzipSync(JSON.stringify({ sentAt, records })),
      }),
  };
}

/** What became of each record of a part that was sent. */
export const outcomesOf = async (answer: Promise<Answer>): Promise<readonly string[]> =>
  (await answer)
    .json<{ receipts: { outcome: string; problem?: { code: string } }[] }>()
    .receipts.map(({ outcome, problem }) => problem?.code ?? outcome);
