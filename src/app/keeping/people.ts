import type { PersonRecord } from "../../records/records";

/** Longest name that a record takes. */
export const LONGEST_NAME = 100;

/**
 * A person of this machine.
 *
 * @param now - milliseconds since 1970
 */
export function newPerson(name: string, id: string, now: number): PersonRecord {
  return { id, createdAt: now, updatedAt: now, name, part: "trainee" };
}

/**
 * Why a name cannot be taken, or null.
 *
 * @param others - people it must be told apart from
 */
export function nameProblem(name: string, others: readonly Pick<PersonRecord, "name">[]): string | null {
  const trimmed = name.trim();
  if (trimmed === "") return "Give a name first.";
  if (trimmed.length > LONGEST_NAME) return `Use at most ${LONGEST_NAME} letters.`;
  const isTaken = others.some((one) => one.name.toLocaleLowerCase() === trimmed.toLocaleLowerCase());
  return isTaken ? `${trimmed} is here already; choose another name.` : null;
}

/** Own people by name, then the invented ones. */
export function inOrderOfNames(people: readonly PersonRecord[]): PersonRecord[] {
  const last = ({ isDemo }: PersonRecord) => (isDemo === true ? 1 : 0);
  return people.toSorted((a, b) => last(a) - last(b) || a.name.localeCompare(b.name));
}
