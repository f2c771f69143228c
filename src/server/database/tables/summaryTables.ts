/** What one person did at one skill with one hand, summed up from the records: it can be made again of them at any time. */
export interface SkillSummaryRow {
  readonly school_id: string;
  readonly person_id: string;
  readonly profile_id: string;
  readonly exercise: string;
  /** Empty where no dial is turned. */
  readonly hand: string;
  /** A `SkillSummary` of `src/progress`, JSON. */
  readonly body: string;
}
