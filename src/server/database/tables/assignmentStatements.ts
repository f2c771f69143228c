/** Tables of assignments and of the sittings that come of them. */
export const ASSIGNMENT_STATEMENTS = [
  `create table assignments (
    id text not null, school_id text not null, class_id text not null,
    kind text not null check (kind in ('practice', 'test')), sheet text not null, title text not null,
    sheet_sha256 text not null, from_at bigint not null, until_at bigint not null, attempts int,
    whole_class boolean not null, by_id text not null, created_at bigint not null, updated_at bigint not null,
    version int not null, ended_at bigint,
    primary key (school_id, id), foreign key (school_id, class_id) references classes)`,
  "create index assignments_by_class on assignments (school_id, class_id)",
  `create table assignment_people (
    school_id text not null, assignment_id text not null, person_id text not null, is_asked boolean not null,
    extra_time int check (extra_time between 0 and 300), primary key (school_id, assignment_id, person_id),
    foreign key (school_id, assignment_id) references assignments, foreign key (school_id, person_id) references people)`,
  `create table begun_sittings (
    school_id text not null, id text not null, assignment_id text not null, person_id text not null,
    device_id text not null, attempt int not null, seed bigint not null,
    seed_from text not null check (seed_from in ('sheet', 'server')), extra_time int not null,
    begun_at bigint not null, until_at bigint not null, primary key (school_id, id),
    unique (school_id, assignment_id, person_id, attempt),
    foreign key (school_id, assignment_id) references assignments, foreign key (school_id, person_id) references people)`,
  `create table sitting_tries (
    school_id text not null, sitting_id text not null, place int not null, body text not null, motion text,
    received_at bigint not null, waited_ms bigint not null, primary key (school_id, sitting_id, place),
    foreign key (school_id, sitting_id) references begun_sittings)`,
  `create table sitting_judgments (
    school_id text not null, sitting_id text not null, judged_at bigint not null, app_version text not null,
    received_at bigint not null, outcome text, share_right double precision not null, reloads int not null,
    is_late boolean not null, problem_count int not null, body text not null, primary key (school_id, sitting_id),
    foreign key (school_id, sitting_id) references begun_sittings)`,
  `create table comments (
    school_id text not null, id text not null, sitting_id text not null, person_id text not null, by_id text not null,
    text text not null, at bigint not null, read_at bigint, primary key (school_id, id),
    foreign key (school_id, sitting_id) references begun_sittings)`,
  "create index comments_by_person on comments (school_id, person_id, at)",
] as const;
