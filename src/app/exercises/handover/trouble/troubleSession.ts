import { type ActorRefFrom, createActor } from "xstate";
import { HandSession } from "../../../../dialing/hand/handSession";
import { type DiagnosisMark, markDiagnosis } from "../../../../handover/trouble/markDiagnosis";
import type { Observation } from "../../../../handover/trouble/observation";
import type { Trouble, TroubleTask } from "../../../../handover/trouble/trouble";
import { TroubleBench } from "../../../../handover/trouble/troubleBench";
import { type TroubleContext, type TroubleState, troubleMachine } from "../../../../handover/trouble/troubleMachine";
import { type TroubleResult, troubleResult } from "../../../../handover/trouble/troubleResult";
import type { Graduations, Milliseconds, Turn } from "../../../../lock/dial";
import { type Chance, seededChance } from "../../../../statistics/chance";
import { drawSeed } from "../../../../statistics/drawSeed";
import { HandStore } from "../../../hand/handStore";
import { kindsOf, type TroubleSetup, taskOf } from "./troubleSetup";

/** The trouble bench on the screen: the lock, what was seen of it, and what the chart says may be done. */
export class TroubleSession extends HandStore {
  setup: TroubleSetup;
  task: TroubleTask;
  bench: TroubleBench;
  mark: DiagnosisMark | null = null;
  /** What came of it, once the condition is told. */
  result: TroubleResult | null = null;
  /** Grows with every exercise begun: forms start empty with it. */
  round = 0;
  protected hand: HandSession<never>;
  readonly chart: ActorRefFrom<typeof troubleMachine> = createActor(troubleMachine).start();
  private readonly chance: Chance;
  private startedAt: Milliseconds | null = null;
  private namedAt: Milliseconds = 0;

  /** @param task - the exercise, where it is none of a shipped lock */
  constructor(setup: TroubleSetup, chance: Chance, task: TroubleTask = taskOf(setup)) {
    super();
    this.setup = setup;
    this.chance = chance;
    this.task = task;
    this.bench = this.newBench();
    this.hand = this.takeHold();
  }

  get state(): TroubleState {
    return this.chart.getSnapshot().value;
  }

  get memory(): TroubleContext {
    return this.chart.getSnapshot().context;
  }

  /** The steady hand dials. @param off - graduations for each number @param rest_s - before the last one, seconds */
  dial(off: readonly Graduations[], rest_s: number, now: Milliseconds): void {
    this.look(now, (bench) => bench.dial(off, rest_s));
  }

  readCam(turn: Turn, now: Milliseconds): void {
    this.look(now, (bench) => bench.readCam(turn));
  }

  pull(turn: Turn, now: Milliseconds): void {
    this.look(now, (bench) => bench.pull(turn));
  }

  turnRound(now: Milliseconds): void {
    this.look(now, (bench) => bench.turnRound());
  }

  pushPull(now: Milliseconds): void {
    this.look(now, (bench) => bench.pushPull());
  }

  readMarks(now: Milliseconds): void {
    this.look(now, (bench) => bench.readMarks());
  }

  holdAgainstRules(now: Milliseconds): void {
    this.look(now, (bench) => bench.holdAgainstRules());
  }

  /** The last thing seen, or undefined. */
  get lastSeen(): Observation | undefined {
    return this.bench.log.at(-1);
  }

  name(named: Trouble, now: Milliseconds): void {
    this.namedAt = now;
    this.chart.send({ type: "diagnosis.named", named });
    this.changed();
  }

  withdraw(): void {
    this.chart.send({ type: "diagnosis.withdrawn" });
    this.changed();
  }

  /** Tells the condition and marks the diagnosis that stands. */
  tell(): void {
    const { task, setup, memory, bench } = this;
    const { named } = memory;
    this.chart.send({ type: "condition.told" });
    if (this.state !== "told" || named === null) return;
    const mark = markDiagnosis(task.trouble, named, bench.log);
    const { seed, pool } = setup;
    const time_ms = this.startedAt === null ? 0 : this.namedAt - this.startedAt;
    this.mark = mark;
    this.result = troubleResult({ task, seed, pool, named, mark, counts: memory, time_ms });
    this.changed();
  }

  /** The same lock with the same condition, from nothing seen. */
  again(): void {
    this.begin(this.setup);
  }

  another(): void {
    this.begin({ ...this.setup, seed: drawSeed(this.chance) });
  }

  /** Sets the bench up anew; more or less help leaves the lock alone. */
  change(change: Partial<TroubleSetup>): void {
    const setup = { ...this.setup, ...change };
    if (change.lock === undefined && change.pool === undefined && change.seed === undefined) {
      this.setup = setup;
      this.changed();
      return;
    }
    const pool = setup.pool.filter((kind) => kindsOf(setup.lock).includes(kind));
    const isOtherLock = change.lock !== undefined;
    this.begin({ ...setup, pool: pool.length === 0 || isOtherLock ? kindsOf(setup.lock) : pool });
  }

  private begin(setup: TroubleSetup): void {
    this.round += 1;
    this.setup = setup;
    this.task = taskOf(setup);
    this.bench = this.newBench();
    this.hand = this.takeHold();
    this.mark = null;
    this.result = null;
    this.startedAt = null;
    this.turnedBy.forget();
    this.chart.send({ type: "bench.restarted" });
    this.changed();
  }

  /** Rests and friction are the bench's own: they are among what is looked for. */
  private takeHold(): HandSession<never> {
    const { bench } = this;
    return new HandSession<never>(
      {
        get dial() {
          return bench.lock.dial;
        },
        turnBy: (by, at) => {
          if (by !== 0) bench.turnBy(by, at);
          return [];
        },
      },
      {
        isClosed: () => this.state !== "measuring",
        heard: (_, by, at) => {
          if (by !== 0) this.startedAt ??= at;
        },
      },
    );
  }

  private newBench(): TroubleBench {
    return new TroubleBench(this.task, seededChance(this.setup.seed + 1), this.chart);
  }

  private look(now: Milliseconds, at: (bench: TroubleBench) => unknown): void {
    if (this.state !== "measuring") return;
    this.startedAt ??= now;
    at(this.bench);
    this.changed();
  }
}
