import { gzipSync } from "node:zlib";
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { checkSchools } from "../../../src/server/backup/checkDatabase";
import { checkText } from "../../../src/server/backup/commands";
import type { OpenDatabase } from "../../../src/server/database/openDatabase";
import type { Chance } from "../../../src/statistics/chance";
import { anAttempt } from "../../support/logbookRecords";
import { testBench } from "../support/testBench";
import { MORNING, testSchool, testServer } from "../support/testSchool";

/** A school with a bench that several people joined at. */
export interface WeatherSchool {
  readonly schoolId: string;
  readonly cookie: string;
  readonly people: readonly string[];
}

const NAMES = ["Tavro", "Mibsy", "Orla", "Dorvik"];
/** From one attempt of a person to the next, ms. Of attempts at one moment the server would have to sum up all each time. */
const ATTEMPT_ms = 60_000;

/** Makes a school with a bench in a database in which there is none. */
export async function weatherSchool(database: OpenDatabase): Promise<WeatherSchool> {
  const school = await testServer({ ...database, remove: database.close });
  const { schoolId } = await testSchool(school, "Millbrook");
  const { cookies, people } = await testBench(school, schoolId, NAMES);
  await school.server.close();
  const [cookie = ""] = Object.entries(cookies).map(([name, value]) => `${name}=${value}`);
  return { schoolId, cookie, people };
}

type Sent = Readonly<{ kind: "attempts"; record: ReturnType<typeof anAttempt> }>;

/** A bench in bad weather: makes records, sends them until they are acknowledged, and remembers which were. Mutable. */
export class WeatherBench {
  readonly acknowledged = new Map<string, string>();
  /** Answers that no server may give, whatever happens to it. */
  readonly wrong: string[] = [];
  /** How often it was told to try again, or got no answer. */
  readonly refusals = { told: 0, unanswered: 0 };
  private waiting: Sent[] = [];
  private made = 0;
  private readonly school: WeatherSchool;
  private readonly name: string;
  private readonly personId: string;
  private readonly chance: Chance;

  /** @param k - which of the people of the school sits there, from 0 */
  constructor(school: WeatherSchool, k: number, chance: Chance) {
    this.school = school;
    this.name = `bench${k}`;
    this.personId = school.people[k] ?? "";
    this.chance = chance;
  }

  /** Sends what waits, with some more records. @param address - of the server now */
  async send(address: string, timeout_ms = 10_000): Promise<void> {
    const more = 1 + Math.floor(12 * this.chance());
    for (let k = 0; k < more; k++) {
      const note = "x".repeat(Math.floor(800 * this.chance()));
      const { personId, made } = this;
      const startedAt = MORNING + ATTEMPT_ms * made;
      this.waiting.push({
        kind: "attempts",
        record: anAttempt(`${this.name}-${made}`, { personId, startedAt, note }),
      });
      this.made += 1;
    }
    const part = this.waiting.slice(0, 60);
    try {
      const response = await fetch(`${address}api/bench/records`, {
        method: "POST",
        headers: { "content-type": "application/json", "content-encoding": "gzip", cookie: this.school.cookie },
        body: gzipSync(JSON.stringify({ sentAt: Date.now(), records: part })),
        signal: AbortSignal.timeout(timeout_ms),
      });
      await this.take(part, response);
    } catch {
      // Cut, timed out, refused: it waits and is sent again.
      this.refusals.unanswered += 1;
    }
  }

  private async take(part: readonly Sent[], response: Response): Promise<void> {
    const text = await response.text();
    if (response.status === 503) {
      this.refusals.told += 1;
      return;
    }
    if (response.status !== 200) {
      this.wrong.push(`${response.status} ${text}`);
      return;
    }
    const { receipts } = JSON.parse(text) as { receipts: { id: string; outcome: string }[] };
    receipts.forEach(({ id, outcome }, k) => {
      const { record } = part[k] ?? { record: null };
      if (record === null || id !== record.id || !["received", "known"].includes(outcome)) {
        this.wrong.push(`${id}: ${outcome}`);
        return;
      }
      this.acknowledged.set(id, canonicalJson(record));
    });
    this.waiting = this.waiting.filter(({ record }) => !this.acknowledged.has(record.id));
  }
}

/** What was acknowledged, and what of it is in the database just so; chain and hashes are checked beside. */
export interface Found {
  readonly acknowledged: number;
  readonly found: number;
  readonly rows: number;
  /** What speaks against it; none where all is well. */
  readonly problems: readonly string[];
}

/** Holds what benches were told against what a database has. */
export async function heldAgainst({ query }: OpenDatabase, benches: readonly WeatherBench[]): Promise<Found> {
  const rows = await query.selectFrom("records").select(["id", "body"]).execute();
  const bodies = new Map(rows.map(({ id, body }) => [id, body]));
  const acknowledged = benches.flatMap((bench) => [...bench.acknowledged]);
  const lost = acknowledged.filter(([id, body]) => bodies.get(id) !== body);
  const none = { read: async () => null, write: async () => undefined };
  const checks = await query.transaction().execute((held) => checkSchools(held, none));
  return {
    acknowledged: acknowledged.length,
    found: acknowledged.length - lost.length,
    rows: rows.length,
    problems: [
      ...lost.slice(0, 5).map(([id]) => `${id} was acknowledged and is not there so`),
      ...benches.flatMap(({ wrong }) => wrong.slice(0, 5)),
      ...checks.filter(({ problems }) => problems.length > 0).flatMap(checkText),
    ],
  };
}
