import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import type { HandoverRunRecord } from "../../../../../records/records";
import { keeping } from "../../../../keeping/keeping";
import { newId } from "../../../../parts/page/newId";
import { isRunIn, type KeptRun, keepRun, type RunMark, writeKept } from "../session/keptRun";

/** A handover that goes on, with its mark; nulls where none does. */
interface GoesOn {
  readonly kept: KeptRun | null;
  readonly mark: RunMark | null;
}

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
  /** As it was kept last: what has not changed since is not written again, at leaving the page, over another tab's. */
  private last: string | null;
  private isOurs = true;
  private isEnded = false;
  private personId: string | null = null;
  private waiting: State | null = null;
  private isBusy = false;

  /** @param goesOn - the run that goes on; a new one where left out */
  constructor({ kept, mark }: GoesOn = { kept: null, mark: null }) {
    this.mark = mark === null || mark.id === "" ? freshMark() : mark;
    this.last = kept === null ? null : JSON.stringify(writeKept(kept));
  }

  /** Keeps how the handover is now. */
  keep(kept: KeptRun): void {
    const now = JSON.stringify(writeKept(kept));
    if (!this.isOurs || now === this.last) return;
    this.last = now;
    const isEnded = kept.isEnded === true;
    if (this.isEnded && !isEnded) this.mark = freshMark();
    this.isEnded = isEnded;
    this.mark = { ...this.mark, count: this.mark.count + 1 };
    keepRun(kept, this.mark);
    this.give({ ...this.state(), isRunning: !isEnded, body: writeKept(kept, this.mark) });
  }

  /**
   * Hears what another tab has kept. Where it is this handover, or another at the same door, that tab has it from now on: two
   * tabs never write over each other's acts.
   *
   * @param recorded - the run of this tab
   * @returns whether this tab still keeps it
   */
  heard(text: string | null, recorded: RecordedRun): boolean {
    if (isRunIn(text, this.mark.id, recorded)) this.isOurs = false;
    return this.isOurs;
  }

  /** Notes that the handover was discarded: no copy of it comes back. One that another tab has goes on there. */
  discard(): void {
    if (!this.isOurs) return;
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
