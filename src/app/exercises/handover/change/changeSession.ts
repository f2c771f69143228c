import { type ActorRefFrom, createActor } from "xstate";
import type { Help } from "../../../../dialing/advice";
import { dialingMachine } from "../../../../dialing/dialingMachine";
import type { DialWeight } from "../../../../dialing/hand/dialFeel";
import { HandSession } from "../../../../dialing/hand/handSession";
import { trainUnderHand } from "../../../../dialing/hand/trainUnderHand";
import { spunOffStart } from "../../../../dialing/spunOffStart";
import { drawCombination } from "../../../../drill/combinations/drawCombination";
import { beginChange, type Change } from "../../../../handover/change/change";
import type { ChangeAct, ChangeEvent, ChangeState } from "../../../../handover/change/changeInHand";
import { canBeChanged } from "../../../../handover/change/changeProfile";
import type { Combination } from "../../../../lock/combination";
import type { Graduations, Position, Reading } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { LockTrain } from "../../../../lock/train/lockTrain";
import type { Chance } from "../../../../statistics/chance";
import type { DialFit } from "../../../hand/dial/dialAddress";
import { HandStore } from "../../../hand/handStore";
import { combinationAsSet } from "../../bench/benchSetup";
import type { RefusedAct } from "./changeWords";

/** Locks whose combination can be changed. */
export const CHANGEABLE: readonly Profile[] = SHIPPED_PROFILES.filter(canBeChanged);

/** What the exercise is asked for. */
export interface ChangeSpec {
  readonly profile: Profile;
  readonly help: Help;
  /** The new combination; drawn by the rules where left out. */
  readonly wanted?: Combination | null;
  readonly weight?: DialWeight;
  /** How the index stands and the cam follows; both true where left out. */
  readonly fit?: DialFit | undefined;
}

/** What the exercise is set up for. */
export interface ChangeSetup {
  readonly profile: Profile;
  readonly present: Combination;
  readonly wanted: Combination;
  readonly isOwn: boolean;
}

/**
 * A change of combination on the screen: the change under the hand, and what was refused last.
 *
 * A store outside React. It asks nobody for time or chance: both are handed in.
 */
export class ChangeSession extends HandStore {
  setup: ChangeSetup;
  help: Help;
  change: Change;
  /** Why the last act did nothing, or null where it did something. */
  refused: RefusedAct | null = null;
  /** Where the dialing of the numbers asked for now is; the change has a chart of its own. */
  chart: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  protected hand: HandSession<ChangeEvent>;
  private readonly chance: Chance;
  private readonly asked: Pick<ChangeSpec, "weight" | "fit">;
  /** Ring and cam, where they are not both true. */
  private train: LockTrain | null = null;

  constructor({ profile, help, wanted = null, ...asked }: ChangeSpec, chance: Chance) {
    super();
    this.chance = chance;
    this.help = help;
    this.asked = asked;
    const drawn = this.drawnFor(profile);
    this.setup = { ...drawn, wanted: wanted ?? drawn.wanted };
    this.change = this.newChange();
    this.chart = this.newChart();
    this.hand = this.takeHold();
  }

  get state(): ChangeState {
    return this.change.state;
  }

  /** Where the dial itself stands: not where the lock is, if the cam follows it with play. */
  get dial(): Position {
    return this.train?.dial ?? this.change.dial;
  }

  /** How far the ring with its indexes stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.train?.indexError ?? 0;
  }

  /** What the index in use reads as drawn, unwrapped. */
  get seen(): Reading {
    return this.change.hand.dial + (this.dial - this.change.dial) - this.indexError;
  }

  act(act: ChangeAct): void {
    const { facts, refusal } = this.change.act(act);
    this.hand.did(facts);
    this.refused = refusal;
    this.changed();
  }

  /** Tells why there is no such act now. */
  refuse(why: RefusedAct): void {
    this.refused = why;
    this.changed();
  }

  setHelp(help: Help): void {
    this.help = help;
    this.changed();
  }

  /** The same numbers on a lock set back. */
  again(): void {
    this.begin(this.setup);
  }

  /** New numbers by the rules. */
  drawAnother(): void {
    this.begin(this.drawnFor(this.setup.profile));
  }

  takeLock(profile: Profile): void {
    this.begin(this.drawnFor(profile));
  }

  takeOwn(wanted: Combination): void {
    this.begin({ ...this.setup, wanted, isOwn: true });
  }

  private begin(setup: ChangeSetup): void {
    this.setup = setup;
    this.change = this.newChange();
    this.chart = this.newChart();
    this.hand = this.takeHold();
    this.refused = null;
    this.turnedBy.forget();
    this.changed();
  }

  private drawnFor(profile: Profile): ChangeSetup {
    const present = combinationAsSet(profile, this.chance);
    return { profile, present, wanted: drawCombination(profile, this.chance), isOwn: false };
  }

  private newChange(): Change {
    const { profile, present, wanted } = this.setup;
    const start = spunOffStart(profile, present, this.chance);
    return beginChange(profile, present, wanted, start);
  }

  private newChart() {
    return createActor(dialingMachine(this.setup.profile)).start();
  }

  private takeHold(): HandSession<ChangeEvent> {
    const { change, asked, chart } = this;
    const train = asked.fit && new LockTrain({ ...asked.fit, start: change.dial }, change.profile.graduations);
    this.train = train ?? null;
    return new HandSession(train === undefined ? change : trainUnderHand(train, () => change), {
      weight: asked.weight,
      chart,
      isClosed: () => change.isDoorShut,
      heard: (_, by) => {
        if (by !== 0) this.refused = null;
      },
    });
  }
}
