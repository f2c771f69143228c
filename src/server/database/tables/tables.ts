import type { ColumnType } from "kysely";
import type { AssignmentTables } from "./assignmentTables";
import type { Maybe, Moment } from "./columns";
import type { LiveAttemptRow, LiveHandRow } from "./liveTables";
import type { SkillSummaryRow } from "./summaryTables";

/** A school: everything else belongs to one, and nothing of one is ever shown to another. */
export interface SchoolRow {
  readonly id: string;
  readonly name: string;
  readonly created_at: Moment;
}

/** Whoever teaches and signs in with a password. */
export interface InstructorRow {
  readonly id: string;
  readonly school_id: string;
  readonly name: string;
  /** In small letters, unique in the whole database. */
  readonly login: string;
  readonly password_hash: string;
  readonly role: "head" | "instructor";
  readonly created_at: Moment;
  readonly disabled_at: Maybe<Moment>;
}

/** A link, for one use: it makes the first instructor of a school, one more, or a new password. */
export interface InvitationRow {
  readonly token_hash: string;
  readonly id: string;
  /** Left out where it makes the school too. */
  readonly school_id: Maybe<string>;
  /** Whose password it sets anew; left out where it makes an instructor. */
  readonly instructor_id: Maybe<string>;
  readonly role: "head" | "instructor";
  readonly created_at: Moment;
  readonly expires_at: Moment;
  readonly used_at: Maybe<Moment>;
}

/** An instructor who is signed in at a browser. */
export interface SignInRow {
  readonly token_hash: string;
  readonly id: string;
  readonly school_id: string;
  readonly instructor_id: string;
  /** What every change from that browser must bring along, beside the cookie. */
  readonly csrf: string;
  /** What the browser says that it is, so that its owner knows it again. */
  readonly browser: string;
  readonly created_at: Moment;
  readonly expires_at: Moment;
}

/** A class of a school. */
export interface ClassRow {
  readonly id: string;
  readonly school_id: string;
  readonly name: string;
  readonly created_at: Moment;
  readonly ended_at: Maybe<Moment>;
}

/** A code by which apprentices join a class: short-lived and revocable. */
export interface ClassCodeRow {
  readonly code: string;
  readonly school_id: string;
  readonly class_id: string;
  readonly created_at: Moment;
  readonly expires_at: Moment;
  readonly revoked_at: Maybe<Moment>;
}

/** An apprentice of a school: one identity on every bench. */
export interface PersonRow {
  readonly id: string;
  readonly school_id: string;
  readonly name: string;
  readonly pin_hash: Maybe<string>;
  /** Whoever joined under a name that was not on the roster, and whom no instructor has looked at yet. */
  readonly by_code: ColumnType<boolean, boolean | undefined, boolean>;
  /** More time in sittings than others have, percent of the sheet's. */
  readonly extra_time: number;
  readonly created_at: Moment;
  readonly updated_at: Moment;
  /** How often the row was changed. */
  readonly version: number;
  readonly erased_at: Maybe<Moment>;
  /** Another entry of the same person: this one stands for it at benches that know its id. */
  readonly merged_into: Maybe<string>;
}

/** Who is in which class. */
export interface ClassPersonRow {
  readonly school_id: string;
  readonly class_id: string;
  readonly person_id: string;
  readonly joined_at: Moment;
  readonly left_at: Maybe<Moment>;
}

/** A printed join card of one person. */
export interface CardRow {
  /** Of what its QR code has. */
  readonly token_hash: string;
  /** Of the code that is printed beside it, for whoever has no camera. */
  readonly code_hash: string;
  readonly school_id: string;
  readonly class_id: string;
  readonly person_id: string;
  readonly created_at: Moment;
  readonly revoked_at: Maybe<Moment>;
}

/** A bench that joined. */
export interface DeviceRow {
  readonly id: string;
  readonly school_id: string;
  readonly class_id: string;
  readonly token_hash: string;
  readonly name: string;
  readonly created_at: Moment;
  readonly seen_at: Moment;
  readonly signed_out_at: Maybe<Moment>;
}

/** Who joined at which bench. Whoever left it may not be asked about there any more; what they did there is still taken. */
export interface DevicePersonRow {
  readonly school_id: string;
  readonly device_id: string;
  readonly person_id: string;
  readonly joined_at: Moment;
  readonly left_at: Maybe<Moment>;
}

/** A record as a bench sent it. Nothing of it is ever changed. */
export interface RecordRow {
  readonly school_id: string;
  readonly id: string;
  readonly kind: string;
  readonly person_id: string;
  readonly device_id: string;
  /** By the bench's clock. */
  readonly started_at: Moment;
  /** By the server's. */
  readonly received_at: Moment;
  /** How far the bench's clock was ahead when it sent this, milliseconds. */
  readonly clock_ahead_ms: number;
  /** Of the canonical JSON of kind and record, and of its motion. */
  readonly sha256: string;
  /** Its place in the chain of what the school received. */
  readonly place: number;
  /** Canonical JSON: a database's own JSON would change numbers and refuse some text. */
  readonly body: string;
  readonly motion: Maybe<Uint8Array>;
}

/** Tags and note of a record, as they were changed: the one with the highest version holds. */
export interface RecordEditRow {
  readonly school_id: string;
  readonly record_id: string;
  readonly version: number;
  readonly by_id: string;
  readonly at: Moment;
  readonly body: string;
}

/** A record that was deleted: that it was there stays known, what it was does not. */
export interface TombstoneRow {
  readonly school_id: string;
  readonly record_id: string;
  readonly kind: string;
  readonly by_id: string;
  readonly at: Moment;
}

/** A link of the chain of what a school received: each holds the hash of the one before. */
export interface ChainRow {
  readonly school_id: string;
  /** From 1 on, without a gap. */
  readonly place: number;
  readonly at: Moment;
  /** What was received: a kind of record, an edit, a deletion, the start of a sitting. */
  readonly what: string;
  readonly of_id: string;
  readonly sha256: string;
  /** SHA-256 of the link before and of this one's own fields. */
  readonly link: string;
}

/** A public key of a school; its private half lies apart from the data. */
export interface SigningKeyRow {
  /** Its fingerprint. */
  readonly id: string;
  readonly school_id: string;
  /** 32 bytes, hexadecimal. */
  readonly public_key: string;
  readonly created_at: Moment;
  readonly retired_at: Maybe<Moment>;
}

/** What an instructor changed: who, when, what. */
export interface AuditRow {
  readonly id: ColumnType<number, never, never>;
  readonly school_id: string;
  readonly at: Moment;
  readonly by_id: string;
  readonly action: string;
  readonly of_id: string;
  /** JSON of what is needed to understand it; never a password, a PIN or a token. */
  readonly details: string;
}

/** Tries of something that can be guessed: by whom, or at what. It has no school: who guesses may not know one. */
export interface TryRow {
  /** What is tried, and the SHA-256 of where from or at what. */
  readonly key: string;
  /** Wrong ones, and those under way. */
  readonly count: number;
  readonly last_at: Moment;
  /** When the next one is let through. */
  readonly until: Moment;
}

/** Every table of the server's database. */
export interface Tables extends AssignmentTables {
  readonly tries: TryRow;
  readonly schools: SchoolRow;
  readonly instructors: InstructorRow;
  readonly invitations: InvitationRow;
  readonly sign_ins: SignInRow;
  readonly classes: ClassRow;
  readonly class_codes: ClassCodeRow;
  readonly people: PersonRow;
  readonly class_people: ClassPersonRow;
  readonly cards: CardRow;
  readonly devices: DeviceRow;
  readonly device_people: DevicePersonRow;
  readonly records: RecordRow;
  readonly record_edits: RecordEditRow;
  readonly tombstones: TombstoneRow;
  readonly chain: ChainRow;
  readonly signing_keys: SigningKeyRow;
  readonly audit: AuditRow;
  readonly live_hands: LiveHandRow;
  readonly live_attempts: LiveAttemptRow;
  readonly skill_summaries: SkillSummaryRow;
}
