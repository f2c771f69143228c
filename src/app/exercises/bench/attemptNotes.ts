import type { Attempt } from "../../../dialing/attempt";
import { judgedFaults } from "../../../drill/marking/coarseStep";
import type { Milliseconds } from "../../../lock/dial";
import { type AttemptNote, attemptNote } from "../../../records/attempt/attemptNote";
import { conditionsOf } from "../../../records/attemptConditions";
import { attemptOutcome, unfinishedOutcome } from "../../../records/attemptOutcome";
import { exerciseOf } from "../../../records/exercise";
import type { NotedAttempt } from "../../keeping/notedAttempt";
import type { BenchSession } from "./benchSession";

/** When a record was first made, and its id. */
type FirstMade = Pick<AttemptNote, "id" | "startedAt" | "createdAt">;

/** Names the attempts of a bench. One that failed and opens after all keeps its record. */
export class AttemptNotes {
  private readonly made = new WeakMap<Attempt, FirstMade>();
  private readonly newId: () => string;

  /** @param newId - makes an id that nothing else has */
  constructor(newId: () => string) {
    this.newId = newId;
  }

  /**
   * Takes down the shown attempt.
   *
   * @param ended - null while it is under way; it then counts as unfinished until it is taken down again
   * @param now - milliseconds since 1970
   */
  note({ attempt, recording, setup, estimate, turnedBy }: NotedBench, ended: Ended | null, now: number): NotedAttempt {
    const time_ms = ended?.time_ms ?? recording.times_ms.at(-1) ?? 0;
    const startedAt = Math.round(now - time_ms);
    const first = this.made.get(attempt) ?? { id: this.newId(), startedAt, createdAt: now };
    this.made.set(attempt, first);
    const frame = {
      ...first,
      updatedAt: now,
      duration_ms: time_ms,
      exercise: exerciseOf(),
      help: setup.help,
      conditions: conditionsOf({ ...setup.fit, dial: setup.dial }),
      ...turnedBy.forRecord,
      ...(typeof estimate === "number" && { estimate }),
    };
    const came = ended === null ? unfinishedOutcome(attempt) : attemptOutcome(attempt);
    return {
      record: attemptNote(frame, attempt, { ...came, faults: judgedFaults(came.faults, frame.sources) }),
      motion: turnedBy.mayKeepMotion
        ? { start: recording.start, positions: [...recording.positions], times_ms: [...recording.times_ms] }
        : null,
    };
  }
}

/** How long an attempt took, from the first motion. */
interface Ended {
  readonly time_ms: Milliseconds;
}

/** What of a bench is taken down. */
type NotedBench = Pick<BenchSession, "attempt" | "recording" | "setup" | "estimate" | "turnedBy">;
