import type * as z from "zod/mini";
import { SHIPPED_SHEETS } from "../../drill/sheet/shippedSheets";
import { drawId } from "../../progress/demo/demoAttempt";
import { DEMO_SCHOOL, demoClass } from "../../school/demo/demoClass";
import { weekOfRecords } from "../../school/demo/demoRecords";
import type { assignmentAnswer } from "../../school/wire/assignmentsWire";
import type { classCode } from "../../school/wire/classWire";
import type { rosterPreview } from "../../school/wire/rosterWire";
import { type Chance, seededChance } from "../../statistics/chance";
import type { ClassServer } from "../http/routes";
import { Agenda } from "./agenda";
import { DemoAsker } from "./demoAsker";
import { DemoBench } from "./demoBench";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;
/** A bench begins a little after the one beside it, ms. */
const STAGGER_MS = 5000;
/** The two sheets of the week, by title: practice, and the test on Friday; and what is set for the next. */
const SHEETS = { practice: "Whole combination, whole hand", test: "Numbers for a stranger", next: "Past it" } as const;
/** Of every five benches, counted from 0: this one has no network on Wednesday, the answers to that one get lost. */
const [CUT_OFF, UNLUCKY] = [1, 3];
const OF_EVERY = 5;

/** How the demo week is run. */
export interface DemoSetting {
  readonly server: ClassServer;
  /** Sets the server's clock on. @param at - milliseconds since 1970 */
  readonly passTo: (at: number) => void;
  readonly seed: number;
  /** Of how many apprentices the class is; 1 to `DEMO_CLASS`. */
  readonly apprentices: number;
  /** Beginning of its Monday, milliseconds since 1970; the week ends on Friday at 17:00. */
  readonly monday: number;
  /** Secret of the one-time link that makes the school. */
  readonly token: string;
  /** What the invented instructor signs in with. */
  readonly password: string;
  readonly appVersion: string;
}

/** What the week came to. */
export interface DemoWeek {
  readonly classId: string;
  readonly instructor: DemoAsker;
  /** Different records that benches were told are stored, and how often one was sent that was there already. */
  readonly acknowledged: number;
  readonly known: number;
  readonly sittings: number;
}

const moment = (monday: number, day: number, hour: number) => monday + day * DAY_MS + hour * HOUR_MS;

/** Runs the week; its parts share what has come of it so far. */
class Week {
  readonly instructor: DemoAsker;
  readonly benches: readonly DemoBench[];
  classId = "";
  sittings = 0;
  private readonly setting: DemoSetting;
  private readonly chance: Chance;
  private readonly agenda = new Agenda();
  private readonly assignments = new Map<string, string>();

  constructor(setting: DemoSetting) {
    this.setting = setting;
    this.chance = seededChance(setting.seed);
    this.instructor = new DemoAsker(setting.server);
    this.benches = demoClass(setting.apprentices, this.chance).map(
      (apprentice) => new DemoBench(setting.server, apprentice, this.chance),
    );
  }

  async run(): Promise<void> {
    const { monday, passTo } = this.setting;
    const at = (day: number, hour: number, act: () => Promise<void>) => this.agenda.add(moment(monday, day, hour), act);
    at(0, 7, () => this.open());
    at(0, 7.5, () => this.assignAll());
    for (const day of [0, 1, 2, 3, 4]) for (const hour of [12, 16.5]) this.allSend(day, hour);
    this.allSit("practice", 2, 15, (k) => k % 3 !== 2);
    this.allSit("practice", 3, 15, (k) => (this.benches[k]?.apprentice.skill ?? 1) < 0.4);
    this.allSit("test", 4, 14, (k) => k !== 0 || this.benches.length === 1);
    at(4, 16.75, () => this.comment());
    at(4, 17, () =>
      this.assign("next", { from: moment(monday, 4, 17), until: moment(monday, 18, 17), attempts: null }),
    );
    await this.agenda.run(passTo);
  }

  /** The school is made by its link, the class by hand, its roster from a file; everybody joins by the code. */
  private async open(): Promise<void> {
    const { instructor, setting } = this;
    const { token, password } = setting;
    const { name: school, instructor: name, className } = DEMO_SCHOOL;
    await instructor.post("/api/schools", { token, school, name, login: name, password });
    this.classId = (await instructor.post<{ id: string }>("/api/classes", { name: className })).id;
    // One of them has a quarter more time.
    const csv = [
      "name,extra time",
      ...this.benches.map(({ apprentice }, k) => `${apprentice.name},${k === 1 ? 25 : 0}`),
    ];
    const file = { csv: csv.join("\n") };
    const url = `/api/classes/${this.classId}/roster`;
    const { seen } = await instructor.post<z.infer<typeof rosterPreview>>(`${url}/preview`, file);
    await instructor.post(url, { ...file, seen });
    const codes = `/api/classes/${this.classId}/codes`;
    const { code } = await instructor.post<z.infer<typeof classCode>>(codes, {});
    for (const bench of this.benches) {
      await bench.join(code);
      const practicing = { apprentice: bench.apprentice, personId: bench.personId, monday: setting.monday };
      bench.keep(weekOfRecords(practicing, this.chance));
    }
  }

  /** Whoever signed in on Monday is not signed in any more on Friday. */
  async signIn(): Promise<void> {
    await this.instructor.post("/api/sign-in", { login: DEMO_SCHOOL.instructor, password: this.setting.password });
  }

  private async assignAll(): Promise<void> {
    const { monday } = this.setting;
    await this.assign("practice", { from: moment(monday, 1, 0), until: moment(monday, 4, 12), attempts: 3 });
    await this.assign("test", { from: moment(monday, 4, 14), until: moment(monday, 4, 16), attempts: 1 });
  }

  private async assign(
    which: keyof typeof SHEETS,
    time: { readonly from: number; readonly until: number; readonly attempts: number | null },
  ): Promise<void> {
    const sheet = SHIPPED_SHEETS.find(({ title }) => title === SHEETS[which]);
    const kind = which === "test" ? "test" : "practice";
    const terms = { classId: this.classId, sheet, kind, ...time, people: null, extraTime: [] };
    const { id } = await this.instructor.post<z.infer<typeof assignmentAnswer>>("/api/assignments", terms);
    this.assignments.set(which, id);
  }

  private allSend(day: number, hour: number): void {
    for (const [k, bench] of this.benches.entries()) {
      const at = moment(this.setting.monday, day, hour) + k * STAGGER_MS;
      if (day === 2 && k % OF_EVERY === CUT_OFF) continue;
      this.agenda.add(at, () => bench.send(at, k % OF_EVERY === UNLUCKY));
    }
  }

  /** Everybody of a choice sits a sheet: tries are sent as they end, but by benches without a network. */
  private allSit(which: keyof typeof SHEETS, day: number, hour: number, isAsked: (k: number) => boolean): void {
    for (const [k, bench] of this.benches.entries()) {
      // A sitting begins at the server: a bench without a network sits none on that day.
      if (!isAsked(k) || (day === 2 && k % OF_EVERY === CUT_OFF)) continue;
      const at = moment(this.setting.monday, day, hour) + k * STAGGER_MS;
      const loses = which === "test" && k % OF_EVERY === CUT_OFF;
      this.agenda.add(at, async () => {
        const id = drawId(this.chance);
        const sat = await bench.sit(this.assignments.get(which) ?? "", id, this.setting.appVersion);
        this.sittings += 1;
        if (!loses)
          for (const [index, one] of sat.tries.entries()) this.agenda.add(one.endedAt, () => bench.sendTry(sat, index));
        this.agenda.add(sat.endedAt, () => bench.send(sat.endedAt));
      });
    }
  }

  /** The instructor says something of the first sittings that came in. */
  private async comment(): Promise<void> {
    await this.signIn();
    type Results = { people: { results: { latest: { sittingId: string; outcome: string | null } | null }[] }[] };
    const { people } = await this.instructor.get<Results>(`/api/classes/${this.classId}/results`);
    const latest = people.flatMap(({ results }) => results.flatMap((one) => one.latest ?? [])).slice(0, 3);
    for (const { sittingId, outcome } of latest) {
      const text =
        outcome === "passed" ? "Steady stops. Try it faster." : "Slow down at the last number, and count aloud.";
      await this.instructor.post(`/api/sittings/${sittingId}/comments`, { text });
    }
  }
}

/**
 * Runs the week of an invented class through the routes of a server: the school is opened, benches join, practice, lose the
 * network, send, sit what is assigned. The hands are simulated by seed; each turns the real engine.
 */
export async function runDemoWeek(setting: DemoSetting): Promise<DemoWeek> {
  const week = new Week(setting);
  await week.run();
  const { classId, instructor, benches, sittings } = week;
  const acknowledged = benches.reduce((sum, bench) => sum + bench.acknowledged.size, 0);
  return { classId, instructor, sittings, acknowledged, known: benches.reduce((sum, { known }) => sum + known, 0) };
}
