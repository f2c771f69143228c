import { type Kysely, type Migration, sql } from "kysely";
import { ASSIGNMENT_STATEMENTS } from "./assignmentStatements";
import type { Tables } from "./tables";

/** Every table is keyed by its school first: a row of another school cannot be meant by accident. */
const STATEMENTS = [
  "create table schools (id text primary key, name text not null, created_at bigint not null)",
  `create table instructors (
    id text primary key, school_id text not null references schools, name text not null, login text not null unique,
    password_hash text not null, role text not null check (role in ('head', 'instructor')),
    created_at bigint not null, disabled_at bigint)`,
  `create table invitations (
    token_hash text primary key, id text not null unique, school_id text references schools,
    instructor_id text references instructors, role text not null check (role in ('head', 'instructor')),
    created_at bigint not null, expires_at bigint not null, used_at bigint)`,
  `create table sign_ins (
    token_hash text primary key, id text not null unique, school_id text not null references schools,
    instructor_id text not null references instructors, csrf text not null, browser text not null,
    created_at bigint not null, expires_at bigint not null)`,
  `create table classes (
    id text not null, school_id text not null references schools, name text not null,
    created_at bigint not null, ended_at bigint, primary key (school_id, id))`,
  `create table class_codes (
    code text primary key, school_id text not null, class_id text not null,
    created_at bigint not null, expires_at bigint not null, revoked_at bigint,
    foreign key (school_id, class_id) references classes)`,
  `create table people (
    id text not null, school_id text not null references schools, name text not null, pin_hash text,
    by_code boolean not null default false, extra_time int not null default 0 check (extra_time between 0 and 300),
    created_at bigint not null, updated_at bigint not null, version int not null default 1, erased_at bigint,
    merged_into text,
    primary key (school_id, id))`,
  `create table class_people (
    school_id text not null, class_id text not null, person_id text not null, joined_at bigint not null, left_at bigint,
    primary key (school_id, class_id, person_id),
    foreign key (school_id, class_id) references classes, foreign key (school_id, person_id) references people)`,
  `create table cards (
    token_hash text primary key, code_hash text not null unique,
    school_id text not null, class_id text not null, person_id text not null,
    created_at bigint not null, revoked_at bigint,
    foreign key (school_id, class_id) references classes, foreign key (school_id, person_id) references people)`,
  `create table devices (
    id text not null, school_id text not null, class_id text not null,
    token_hash text not null unique, name text not null,
    created_at bigint not null, seen_at bigint not null, signed_out_at bigint,
    primary key (school_id, id),
    foreign key (school_id, class_id) references classes)`,
  "create index devices_by_class on devices (school_id, class_id)",
  `create table device_people (
    school_id text not null, device_id text not null, person_id text not null, joined_at bigint not null, left_at bigint,
    primary key (school_id, device_id, person_id),
    foreign key (school_id, device_id) references devices, foreign key (school_id, person_id) references people)`,
  `create table records (
    school_id text not null, id text not null, kind text not null, person_id text not null, device_id text not null,
    started_at bigint not null, received_at bigint not null, clock_ahead_ms bigint not null,
    sha256 text not null, place bigint not null, body text not null, motion bytea,
    primary key (school_id, id), foreign key (school_id, person_id) references people)`,
  "create index records_by_person on records (school_id, person_id, kind, started_at)",
  `create table record_edits (
    school_id text not null, record_id text not null, version int not null, by_id text not null, at bigint not null,
    body text not null, primary key (school_id, record_id, version))`,
  `create table tombstones (
    school_id text not null references schools, record_id text not null, kind text not null, by_id text not null,
    at bigint not null, primary key (school_id, record_id))`,
  `create table chain (
    school_id text not null references schools, place bigint not null, at bigint not null, what text not null,
    of_id text not null, sha256 text not null, link text not null, primary key (school_id, place))`,
  `create table signing_keys (
    id text primary key, school_id text not null references schools, public_key text not null,
    created_at bigint not null, retired_at bigint)`,
  `create table audit (
    id bigint generated always as identity primary key, school_id text not null references schools, at bigint not null,
    by_id text not null, action text not null, of_id text not null, details text not null)`,
  "create index audit_by_school on audit (school_id, id)",
  "create index cards_by_person on cards (school_id, person_id)",
  `create table tries (key text primary key, count int not null, last_at bigint not null, until bigint not null)`,
  `create table skill_summaries (
    school_id text not null, person_id text not null, profile_id text not null, exercise text not null,
    hand text not null, body text not null, primary key (school_id, person_id, profile_id, exercise, hand),
    foreign key (school_id, person_id) references people)`,
  `create table live_hands (
    school_id text not null, class_id text not null, device_id text not null, person_id text not null,
    raised_at bigint not null, primary key (school_id, device_id),
    foreign key (school_id, device_id) references devices)`,
  `create table live_attempts (
    school_id text not null, device_id text not null, at bigint not null, body text not null,
    primary key (school_id, device_id), foreign key (school_id, device_id) references devices)`,
];

/** Schools, people, benches, their records, and what is assigned. */
export const firstTables: Migration = {
  async up(database: Kysely<Tables>) {
    for (const statement of [...STATEMENTS, ...ASSIGNMENT_STATEMENTS]) await sql.raw(statement).execute(database);
  },
};
