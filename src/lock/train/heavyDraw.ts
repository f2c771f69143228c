import type { CamPosition, Graduations, Milliseconds, Position } from "../dial";
import { driven, lagging } from "../play";
import { caught } from "./catching";
import { LockTrain, type TrainEnd, type TrainSpec } from "./lockTrain";

/** The end of a train that works a bolt. */
export interface BoltEnd<Fact> extends TrainEnd<Fact> {
  /** Where the dial takes hold of the bolt, or has taken it; null where that is not known before it happens. */
  readonly takesBoltAt?: CamPosition | null;
  /** Whether the bolt moves with a dial that goes on from where it stands. @param by - graduations, left positive */
  movesBolt?(by: Graduations): boolean;
}

/**
 * A lock train whose bolt may run on the edge of its strike.
 *
 * What holds the bolt holds the dial while it draws: friction as all other (`lock/play`), which is there only from where the
 * dial takes hold of the bolt on, and gone where it lets it go. So the hand gets farther ahead before the bolt comes; one that
 * lets go on the way has to take that up again. A bolt that goes in freely changes nothing.
 */
export class HeavyDrawTrain extends LockTrain {
  private readonly bound: TrainSpec;
  private isDrawing = false;

  constructor(spec: TrainSpec, perTurn: number) {
    super(spec, perTurn);
    this.bound = spec;
  }

  override copy(): HeavyDrawTrain {
    return Object.assign(new HeavyDrawTrain(this.bound, this.perTurn), this);
  }

  override drive<Fact>(end: BoltEnd<Fact>, by: Graduations, at?: Milliseconds): readonly Fact[] {
    if ((this.bound.binding ?? 0) === 0 || by === 0) return super.drive(end, by, at);
    this.isDrawing = end.movesBolt?.(by) ?? false;
    const first = this.untilBolt(end, by);
    if (first === null) return super.drive(end, by, at);
    const facts = super.drive(end, first, at);
    this.isDrawing = end.movesBolt?.(by) ?? false;
    return [...facts, ...super.drive(end, by - first, at)];
  }

  protected override dragged(): Position {
    if (!this.isDrawing) return super.dragged();
    const { drag = 0, binding = 0, catching } = this.bound;
    const { dial, hand, perTurn } = this;
    return catching === undefined
      ? driven(dial, hand, lagging(drag + binding))
      : caught(dial, hand, drag + binding, catching, perTurn);
  }

  /**
   * How far the hand turns until the dial takes hold of the bolt, or lets it go; null where a move does not come to that. Once
   * the joints before it are taken up the lock goes with the hand, so what it goes too far is what the hand does.
   */
  private untilBolt<Fact>(end: BoltEnd<Fact>, by: Graduations): Graduations | null {
    const { takesBoltAt } = end;
    if (takesBoltAt === undefined || takesBoltAt === null) return null;
    const trial = this.copy();
    trial.turnBy(by);
    const before = takesBoltAt - this.taken;
    const beyond = trial.taken - takesBoltAt;
    const comesTo = before * by > 0 && beyond * by > 0 && Math.abs(beyond) < Math.abs(by);
    return comesTo ? by - beyond : null;
  }
}
