import { allAttempts } from "../../logbook/attemptQueries";
import { declarationOf } from "../../logbook/mastery";
import type { PersonRecord } from "../../logbook/records";
import { skillKey } from "../../logbook/skill";
import { encodeTrace } from "../../logbook/traceCodec";
import { recordsOfKind } from "../../logbook/wholeLogbook";
import type { AttemptNote } from "./attemptNote";
import { type CurrentLogbook, currentLogbook } from "./currentLogbook";
import { newPerson } from "./people";
import type { ZeroingNote } from "./zeroingNote";

/** Whoever practices before anyone has given a name. */
const FIRST_NAME = "Trainee";

/** Whose record it is. An invented person's records may be looked at, but nobody practices under that name. */
async function personNow(current: CurrentLogbook): Promise<PersonRecord> {
  if (current.person !== null && current.person.isDemo !== true) return current.person;
  const own = (await current.people()).find(({ isDemo }) => isDemo !== true);
  if (own !== undefined) return own;
  const person = newPerson(FIRST_NAME, crypto.randomUUID(), Date.now());
  if (current.person === null) current.choose(person);
  await current.logbook.save({ kind: "people", record: person });
  return person;
}

/** Keeps that a skill is shown, the first time it is. */
async function declare({ logbook }: CurrentLogbook, personId: string, { record }: AttemptNote): Promise<void> {
  const skill = { profileId: record.profileId, exercise: record.exercise };
  const known = await recordsOfKind(logbook, "declarations");
  if (known.some((one) => one.personId === personId && skillKey(one) === skillKey(skill))) return;
  const attempts = await allAttempts(logbook, { personId, profileId: skill.profileId });
  const declaration = declarationOf(
    personId,
    skill,
    attempts.filter((one) => one.exercise === skill.exercise),
  );
  if (declaration !== null) await logbook.save({ kind: "declarations", record: declaration });
}

/** Keeps an attempt for whoever practices now. */
export async function keepAttempt(note: AttemptNote): Promise<void> {
  const current = await currentLogbook();
  const { id } = await personNow(current);
  const record = { ...note.record, personId: id };
  await current.logbook.save({ kind: "attempts", record, trace: encodeTrace(note.motion) });
  await declare(current, id, note);
}

/** Keeps a zeroing for whoever practices now. */
export async function keepZeroing(note: ZeroingNote): Promise<void> {
  const current = await currentLogbook();
  const { id } = await personNow(current);
  await current.logbook.save({ kind: "zeroings", record: { ...note, personId: id } });
}
