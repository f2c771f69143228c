/** A raised hand: at a bench, until the bench or an instructor lowers it. */
export interface LiveHandRow {
  readonly school_id: string;
  readonly class_id: string;
  readonly device_id: string;
  readonly person_id: string;
  readonly raised_at: number;
}

/** An attempt under way, laid down by the server that its bench is connected to because another one was asked for it. */
export interface LiveAttemptRow {
  readonly school_id: string;
  readonly device_id: string;
  readonly at: number;
  readonly body: string;
}
