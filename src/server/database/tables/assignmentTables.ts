import type { Maybe, Moment } from "./columns";

/** A sheet that an instructor set a class, or some of its people. */
export interface AssignmentRow {
  readonly id: string;
  readonly school_id: string;
  readonly class_id: string;
  readonly kind: "practice" | "test";
  /** Canonical JSON of the sheet, as `parseSheet` reads it. */
  readonly sheet: string;
  readonly title: string;
  /** Of what counts in the sheet. */
  readonly sheet_sha256: string;
  readonly from_at: Moment;
  readonly until_at: Moment;
  /** How often each person may begin it; null for as often as one likes. */
  readonly attempts: Maybe<number>;
  /** Whether it is for the whole class; else for those of `assignment_people` who are asked. */
  readonly whole_class: boolean;
  readonly by_id: string;
  readonly created_at: Moment;
  readonly updated_at: Moment;
  readonly version: number;
  readonly ended_at: Maybe<Moment>;
}

/** What holds for one person in an assignment. */
export interface AssignmentPersonRow {
  readonly school_id: string;
  readonly assignment_id: string;
  readonly person_id: string;
  /** Whether it is for this person, where it is not for the whole class. */
  readonly is_asked: boolean;
  /** Percent, in place of what the roster says; null where that holds. */
  readonly extra_time: Maybe<number>;
}

/** A sitting that a bench began: sheet and seed were given then. Its id is that of its record. */
export interface BegunSittingRow {
  readonly school_id: string;
  readonly id: string;
  readonly assignment_id: string;
  readonly person_id: string;
  readonly device_id: string;
  /** From 1, of this person at this assignment. */
  readonly attempt: number;
  readonly seed: number;
  readonly seed_from: "sheet" | "server";
  /** Percent. */
  readonly extra_time: number;
  readonly begun_at: Moment;
  /** Until when it was to come in, as the assignment said when it was begun. */
  readonly until_at: Moment;
}

/** A try of a sitting as it was sent when it had ended. */
export interface SittingTryRow {
  readonly school_id: string;
  readonly sitting_id: string;
  /** From 0. */
  readonly place: number;
  /** Canonical JSON. */
  readonly body: string;
  /** As a record packs it. */
  readonly motion: Maybe<string>;
  readonly received_at: Moment;
  /** By the bench's clock. */
  readonly waited_ms: number;
}

/** What the server made of a sitting that came in, by its own marking. */
export interface SittingJudgmentRow {
  readonly school_id: string;
  readonly sitting_id: string;
  readonly judged_at: Moment;
  /** Version of the server that marked it. */
  readonly app_version: string;
  readonly received_at: Moment;
  readonly outcome: Maybe<"passed" | "failed" | "not shown yet" | "broken-off">;
  readonly share_right: number;
  readonly reloads: number;
  readonly is_late: boolean;
  /** How much does not agree. */
  readonly problem_count: number;
  /** JSON: problems, remarks and marks. */
  readonly body: string;
}

/** What an instructor said of a sitting. */
export interface CommentRow {
  readonly school_id: string;
  readonly id: string;
  readonly sitting_id: string;
  readonly person_id: string;
  readonly by_id: string;
  readonly text: string;
  readonly at: Moment;
  /** When the person read it. */
  readonly read_at: Maybe<Moment>;
}

/** Tables of assignments and of the sittings that come of them. */
export interface AssignmentTables {
  readonly assignments: AssignmentRow;
  readonly assignment_people: AssignmentPersonRow;
  readonly begun_sittings: BegunSittingRow;
  readonly sitting_tries: SittingTryRow;
  readonly sitting_judgments: SittingJudgmentRow;
  readonly comments: CommentRow;
}
