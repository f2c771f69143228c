import * as z from "zod/mini";
import type { Motion } from "../../dialing/motion";
import type { JobNote } from "../../records/job/jobNote";
import { encodeTrace } from "../../records/motion/traceCodec";
import type { HandoverRunRecord, PersonRecord, SittingRecord } from "../../records/records";
import { tryId } from "../../records/tryOfSitting";
import type { ZeroingNote } from "../../records/zeroing/zeroingNote";
import { motionOf } from "../../store/attemptQueries";
import { endedTries } from "../../store/endedTries";
import type { Saved } from "../../store/logbook";
import type { LogbookWrite } from "../../store/logbookWrite";
import { runningSittings, sittingById } from "../../store/sittingQueries";
import { dropUnfinished, recordsOfKind } from "../../store/wholeLogbook";
import { newId } from "../parts/page/newId";
import { type CurrentLogbook, currentLogbook, openedLogbook } from "./currentLogbook";
import { declareShown } from "./declareSkill";
import { jobWrite } from "./jobWrite";
import type { SavingState } from "./keepingQueue";
import type { NotedAttempt } from "./notedAttempt";
import { nameProblem, newPerson } from "./people";
import { waitingCount } from "./stateWords";

/** Whoever practices before anyone has given a name. */
const FIRST_NAME = "Trainee";

/** Who practices now, as far as anybody does; null where nobody has practiced here yet. */
export async function whoPractices(): Promise<PersonRecord | null> {
  const current = await currentLogbook();
  if (current.person !== null && current.person.isDemo !== true) return current.person;
  return (await current.people()).find(({ isDemo }) => isDemo !== true) ?? null;
}

/** Whose a record is, and the person to be made with it where nobody is there yet. */
interface Owner {
  readonly id: string;
  readonly made: readonly LogbookWrite[];
}

/**
 * Whose record it is. An invented person's records may be looked at, but nobody practices under that name. Where nobody
 * can be asked for, it is kept for whoever is there once it can be stored.
 */
async function ownerNow(): Promise<Owner> {
  const own = await whoPractices().catch(() => null);
  if (own !== null) return { id: own.id, made: [] };
  const record = newPerson(FIRST_NAME, newId(), Date.now());
  return { id: record.id, made: [{ kind: "people", record, only: "if-nobody" }] };
}

/** Keeps records with their person in one go, and what skills they show. */
async function keepWith(
  current: CurrentLogbook,
  { id, made }: Owner,
  ...writes: readonly LogbookWrite[]
): Promise<Saved> {
  const saved = await current.logbook.save(...made, ...writes);
  if (made.length > 0 && current.person === null) await current.settle().catch(() => undefined);
  // Another tab may have made somebody first.
  const personId = current.logbook.people.personFor(id);
  if (!saved.isStored || saved.ended.size === 0) await declareShown(current, personId, writes);
  return saved;
}

/** Hears how safe the records of this page are, now and after every change. */
export async function watch(hear: (state: SavingState) => void): Promise<void> {
  const current = await currentLogbook();
  const tell = () => {
    const { pending, problem } = current.logbook;
    hear({
      waiting: waitingCount(pending),
      problem: problem?.message ?? null,
      remedy: problem?.code === "newer-version" ? "reload" : "retry",
      isCopied: current.isCopied,
    });
  };
  current.subscribe(tell);
  tell();
}

/** Tries again to store what waits. */
export async function retry(): Promise<void> {
  await (await currentLogbook()).logbook.retry();
}

const leftSchema = z.array(z.array(z.object({ kind: z.enum(["attempt", "zeroing", "job"]), note: z.unknown() })));

/** Keeps what pages before this one took down and could not keep. What is none is not kept; each record is checked. */
export async function keepLeft(left: unknown): Promise<void> {
  for (const { kind, note } of (leftSchema.safeParse(left).data ?? []).flat()) {
    const keeps = { attempt: keepAttempt, zeroing: keepZeroing, job: keepJob } as const;
    await (keeps[kind] as (one: unknown) => Promise<void>)(note).catch(() => undefined);
  }
}

/** Copies at once what the database may not have yet. */
export const copyWaiting = (): void => openedLogbook()?.copyWaiting();

/** Opens the logbook, so that the first record has not to wait for it. */
export async function openUp(): Promise<void> {
  await currentLogbook();
}

/** Keeps an attempt for whoever practices now. */
export async function keepAttempt(note: NotedAttempt): Promise<void> {
  const current = await currentLogbook();
  const owner = await ownerNow();
  const record = { ...note.record, personId: owner.id };
  const trace = note.motion === null ? undefined : encodeTrace(note.motion);
  await keepWith(current, owner, { kind: "attempts", record, trace });
}

/** Keeps a zeroing for whoever practices now. */
export async function keepZeroing(note: ZeroingNote): Promise<void> {
  const current = await currentLogbook();
  const owner = await ownerNow();
  await keepWith(current, owner, { kind: "zeroings", record: { ...note, personId: owner.id } });
}

/** Keeps a job for whoever practices now; one that is kept again stays with its person, and keeps its tags and note. */
export async function keepJob(note: JobNote): Promise<void> {
  const current = await currentLogbook();
  const known = await recordsOfKind(current.logbook, "jobs").catch(() => []);
  const before = known.find((one) => one.id === note.id);
  const owner = before === undefined ? await ownerNow() : { id: before.personId, made: [] };
  const noted = before && { tags: before.tags, ...(before.note !== undefined && { note: before.note }) };
  await keepWith(current, owner, jobWrite(owner.id, { ...note, ...noted }));
}

/**
 * Whose records are: the person named stays so, even one that another tab has deleted meanwhile, for a record brings its
 * person back. Looked for in the tables only where it must be: every moment before a record is stored is one it can be
 * lost in.
 */
async function ownerNamed(current: CurrentLogbook, personId: string | null): Promise<Owner> {
  if (personId === null) return ownerNow();
  const id = current.logbook.people.personFor(personId);
  const isHere = current.logbook.people.byId.has(id) || (await current.people()).some((one) => one.id === id);
  return isHere ? { id, made: [] } : ownerNow();
}

/**
 * Keeps records that belong together, all or none.
 *
 * @param personId - whose they are; whoever practices now, where nobody is named or the one named is gone
 * @returns ids of sittings that the records take as going on and that have ended: nothing of those was kept
 */
export async function keepFor(
  personId: string | null,
  writes: (personId: string) => readonly LogbookWrite[],
): Promise<ReadonlySet<string>> {
  const current = await currentLogbook();
  const owner = await ownerNamed(current, personId);
  const saved = await keepWith(current, owner, ...writes(owner.id));
  return saved.isStored ? saved.ended : new Set();
}

/** Forgets an unfinished attempt that was put away. */
export async function dropAttempt(id: string): Promise<void> {
  await dropUnfinished((await currentLogbook()).logbook, id);
}

/** Sittings that have not ended, latest first. */
export async function sittingsNow(): Promise<readonly SittingRecord[]> {
  return runningSittings((await currentLogbook()).logbook);
}

/** Whether a sitting is on record with its end. */
export async function hasEnded(sittingId: string): Promise<boolean> {
  const found = await sittingOnRecord(sittingId);
  return found !== undefined && found.state !== "running";
}

/** Keeps tries that are not on record yet, or as unfinished only. */
export async function keepMissing(
  personId: string | null,
  writes: (personId: string) => readonly LogbookWrite[],
): Promise<ReadonlySet<string>> {
  const { logbook } = await currentLogbook();
  const ids = writes(personId ?? "").map(({ record }) => record.id);
  const known = await endedTries(logbook, ids);
  return keepFor(personId, (owner) => writes(owner).filter(({ record }) => !known.has(record.id)));
}

/** The motions of a sitting's tries, in order; null where none is kept. */
export async function motionsOfSitting(sittingId: string, tries: number): Promise<readonly (Motion | null)[]> {
  const { logbook } = await currentLogbook();
  const ids = Array.from({ length: tries }, (_, index) => tryId(sittingId, index));
  return Promise.all(ids.map(async (id) => (await motionOf(logbook, id).catch(() => null)) ?? null));
}

/** A sitting as the logbook has it. */
export async function sittingOnRecord(id: string): Promise<SittingRecord | undefined> {
  return sittingById((await currentLogbook()).logbook, id);
}

/** Everyone who may practice here, by name; nobody invented. */
export async function ownPeople(): Promise<readonly PersonRecord[]> {
  return (await (await currentLogbook()).people()).filter(({ isDemo }) => isDemo !== true);
}

/** From now on this person practices here. */
export async function practiceAs(person: PersonRecord): Promise<void> {
  (await currentLogbook()).choose(person);
}

/**
 * From now on whoever has this name practices here: the person who has it already, or a new one.
 *
 * @throws {Error} with a sentence, for a name that cannot be taken
 */
export async function practiceUnder(name: string): Promise<PersonRecord> {
  const current = await currentLogbook();
  const wanted = name.trim().toLocaleLowerCase();
  const known = (await ownPeople()).find((one) => one.name.toLocaleLowerCase() === wanted);
  const problem = known === undefined ? nameProblem(name, []) : null;
  if (problem !== null) throw new Error(problem);
  const person = known ?? newPerson(name.trim(), newId(), Date.now());
  if (known === undefined) await current.logbook.save({ kind: "people", record: person });
  current.choose(person);
  return person;
}

/** Handovers under way and ended, as they are stored. */
export async function handoverRuns(): Promise<readonly HandoverRunRecord[]> {
  return recordsOfKind((await currentLogbook()).logbook, "handoverRuns");
}
