import type { Assembly } from "../../../../fitting/assembly";
import type { FitCheck } from "../../../../fitting/fitCheck";
import type { LockToFit } from "../../../../fitting/fittedLock";
import type { FittingAct } from "../../../../fitting/fittingAct";
import { putTogether } from "../../../../fitting/putTogether";
import type { Graduations } from "../../../../lock/dial";
import { exact } from "../../../../lock/exact";
import { Store } from "../../../parts/page/store";

/** A lock whose dial can be taken in hand. */
export interface LockInWork {
  readonly assembly: Assembly;
  readonly lock: LockToFit;
  act(act: FittingAct): void;
  check(check: FitCheck): void;
}

/** A lock that is only looked at: it turns, and nothing comes of it. */
export const looked = ({ assembly, lock }: Pick<LockInWork, "assembly" | "lock">): LockInWork => ({
  assembly,
  lock,
  act: () => {},
  check: () => {},
});

const screwing = (by: Graduations): FittingAct => ({ type: "dial.screwed", by });

/**
 * A hand on the dial of a lock that is fitted. Without a key it screws the dial in or out; with one it turns dial and cam. One
 * hand is for one key, or for none.
 */
export class HandOnDial extends Store {
  /** How far dial and cam have been turned since the key went in, graduations, left positive. */
  turned: Graduations = 0;
  /** How far the dial has been screwed in since the hand took it, graduations; what came before is in the lock. */
  screwed: Graduations = 0;
  isHeld = false;
  private readonly work: () => LockInWork;
  /** Turned in one direction without turning back, for the check that goes all round. */
  private run: Graduations = 0;

  /** @param work - the lock as it is now */
  constructor(work: () => LockInWork) {
    super();
    this.work = work;
  }

  /** A lock as it is in the hand. */
  inHand({ assembly, lock }: LockInWork): Assembly {
    return this.screwed === 0 ? assembly : putTogether(assembly, screwing(this.screwed), lock).assembly;
  }

  /** @param by - graduations, left positive: to the right, a dial goes in */
  turn(by: Graduations): void {
    if (by === 0) return;
    this.isHeld = true;
    if (this.work().assembly.key === null) this.screw(-by);
    else this.goRound(by);
    this.changed();
  }

  /** Lets go: what was screwed is one act. */
  letGo(): void {
    if (!this.isHeld) return;
    const { screwed } = this;
    this.isHeld = false;
    this.screwed = 0;
    if (screwed !== 0) this.work().act(screwing(screwed));
    this.changed();
  }

  private goRound(by: Graduations): void {
    const work = this.work();
    this.turned = exact(this.turned + by);
    this.run = this.run * by < 0 ? by : this.run + by;
    if (Math.abs(this.run) < work.lock.perTurn) return;
    this.run = 0;
    work.check("turn-round");
  }

  private screw(by: Graduations): void {
    const { assembly, lock } = this.work();
    const wanted = exact(this.screwed + by);
    if (assembly.dialIn === null && wanted <= 0) return;
    const { assembly: then, hindrance } = putTogether(assembly, screwing(wanted), lock);
    // What is in the way says so once the hand lets go.
    this.screwed = hindrance === null ? exact((then.dialIn ?? 0) - (assembly.dialIn ?? 0)) : wanted;
  }
}
