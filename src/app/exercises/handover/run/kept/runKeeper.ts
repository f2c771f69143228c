import type { HandoverRunRecord } from "../../../../../records/records";
import { keeping } from "../../../../keeping/keeping";
import { newId } from "../../../../parts/page/newId";
import { type KeptRun, keepRun, type RunMark, writeKept } from "../session/keptRun";

/** A state of the handover on its way to the database; no body where it was discarded. */
type State = Omit<HandoverRunRecord, "personId" | "createdAt">;

/**
 * Keeps one handover: at once as text of the page, and durably in the logbook's database.
 *
 * Every state holds all acts so far, so a state that waits gives way to a later one, and none is lost. A handover that is
 * signed off is final: what is done after going back from there is another one.
 */
export class RunKeeper {
  private mark: RunMark;
  private isEnded = false;
  private personId: string | null = null;
  private waiting: State | null = null;
  private isBusy = false;

  /** @param mark - of the run that goes on; a new one where left out */
  constructor(mark: RunMark | null = null) {
    this.mark = mark === null || mark.id === "" ? freshMark() : mark;
  }

  /** Keeps how the handover is now. */
  keep(kept: KeptRun): void {
    const isEnded = kept.isEnded === true;
    if (this.isEnded && !isEnded) this.mark = freshMark();
    this.isEnded = isEnded;
    this.mark = { ...this.mark, count: this.mark.count + 1 };
    keepRun(kept, this.mark);
    this.give({ ...this.state(), isRunning: !isEnded, body: writeKept(kept, this.mark) });
  }

  /** Notes that the handover was discarded: no copy of it comes back. */
  discard(): void {
    this.mark = { ...this.mark, count: this.mark.count + 1 };
    this.give({ ...this.state(), isRunning: false, body: null });
  }

  private state() {
    const { id, startedAt, count } = this.mark;
    return { id, startedAt, updatedAt: Date.now(), revision: count };
  }

  private give(state: State): void {
    this.waiting = state;
    if (this.isBusy) return;
    this.isBusy = true;
    keeping.add(async ({ keepFor }) => {
      for (let next = this.taken(); next !== null; next = this.taken()) {
        const record = next;
        await keepFor(this.personId, (personId) => {
          this.personId = personId;
          return [{ kind: "handoverRuns", record: { ...record, createdAt: record.startedAt, personId } }];
        });
      }
    });
  }

  private taken(): State | null {
    const { waiting } = this;
    this.waiting = null;
    this.isBusy = waiting !== null;
    return waiting;
  }
}

const freshMark = (): RunMark => ({ id: newId(), startedAt: Date.now(), count: 0 });
