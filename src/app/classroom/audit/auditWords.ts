import type * as z from "zod/mini";
import type { auditLog } from "../../../school/wire/auditWire";
import { countText } from "../../../wording/amountWords";
import { shownName } from "../../parts/shownName";

/** What an instructor changed, as the server wrote it down. */
export type AuditEntry = z.output<typeof auditLog>["entries"][number];

/** Names of what is changed, by id: classes, people, instructors. */
export type Names = ReadonlyMap<string, string>;

interface Changed {
  /** What was changed, by its name. */
  readonly of: string;
  /** The class that is named beside it. */
  readonly inClass: string;
  /** The entry that another was merged into. */
  readonly into: string;
  readonly details: AuditEntry["details"];
}

const GONE = "(not there any more)";

const FIELDS: Readonly<Record<string, string>> = {
  name: "the name",
  extraTime: "the extra time",
  noPin: "the PIN, which is removed",
  isKnown: "that they belong here",
};

const count = (value: unknown): number => (typeof value === "number" ? value : Array.isArray(value) ? value.length : 0);
const text = (value: unknown): string => (typeof value === "string" ? shownName(value) : GONE);
const fieldsText = (value: unknown): string =>
  (Array.isArray(value) ? value : []).map((field) => FIELDS[String(field)] ?? String(field)).join(", ") || "nothing";

/** What each change is, going on from the instructor's name. */
const CHANGES: Readonly<Record<string, (changed: Changed) => string>> = {
  "class.made": ({ of }) => `made the class ${of}`,
  "class.renamed": ({ details }) => `renamed the class ${text(details.from)} to ${text(details.to)}`,
  "class.ended": ({ of }) => `ended the class ${of}`,
  "class.code-made": ({ of }) => `made a class code for ${of}`,
  "class.code-revoked": ({ of }) => `ended a class code of ${of}`,
  "class.roster-taken": ({ of, details }) =>
    `put names from a file on the roster of ${of}: ${count(details.added)} new, ${count(details.matched)} known, ${count(details.refused)} left out`,
  "cards.made": ({ of, details }) => `made ${countText(count(details.personIds), "join card")} for ${of}`,
  "card.revoked": ({ of }) => `canceled the join card of ${of}`,
  "person.added": ({ of, inClass }) => `put ${of} on the roster of ${inClass}`,
  "person.changed": ({ of, details }) => `changed ${of}: ${fieldsText(details.fields)}`,
  "person.left-class": ({ of, inClass }) => `removed ${of} from ${inClass}`,
  "person.merged": ({ into }) => `merged two entries of one person: ${into}`,
  "person.erased": ({ details }) => `erased a person’s data with ${countText(count(details.records), "record")}`,
  "record.deleted": () => "deleted a record",
  "device.signed-out": () => "signed a bench out",
  "instructor.invited": ({ details }) => `made a link that invites one ${text(details.role)}`,
  "instructor.signed-up": ({ details }) => `signed up as ${text(details.role)}`,
  "instructor.password-link": ({ of }) => `made a link for a new password of ${of}`,
  "instructor.password-changed": () => "set a new password",
  "instructor.disabled": ({ of }) => `blocked ${of} from signing in`,
  "instructor.enabled": ({ of }) => `let ${of} sign in again`,
  "link.revoked": () => "took a link back",
  "assignment.made": ({ inClass, details }) => `assigned “${text(details.title)}” to ${inClass}`,
  "assignment.changed": ({ details }) => `changed the assignment “${text(details.title)}”`,
  "assignment.ended": ({ details }) => `ended the assignment “${text(details.title)}” early`,
  "assignment.withdrawn": ({ inClass, details }) => `withdrew “${text(details.title)}” from ${inClass}`,
  "comment.made": () => "left a comment on a sitting",
  "keys.rotated": () => "made a new signing key and retired the one before",
};

/** A change as a sentence: who did what. */
export function auditSentence({ by, action, ofId, details }: AuditEntry, names: Names): string {
  const nameOf = (id: unknown) => shownName(names.get(String(id)) ?? GONE);
  const change = CHANGES[action];
  const done =
    change === undefined
      ? `made a change that this version of the app has no words for (${shownName(action)})`
      : change({ of: nameOf(ofId), inClass: nameOf(details.classId), into: nameOf(details.into), details });
  return `${by.name === "" ? "An instructor" : shownName(by.name)} ${done}.`;
}
