import { type ActorRefFrom, createActor } from "xstate";
import { Attempt } from "../../../../dialing/attempt";
import type { DialWeight } from "../../../../dialing/hand/dialFeel";
import { HandSession } from "../../../../dialing/hand/handSession";
import { idealMotion } from "../../../../dialing/idealMotion";
import { HeldLock } from "../../../../handover/holdback/heldLock";
import { type HoldbackEvent, holdbackMachine } from "../../../../handover/holdback/holdbackMachine";
import type { Profile } from "../../../../lock/profile";
import type { Chance } from "../../../../statistics/chance";
import { HandStore } from "../../../hand/handStore";
import { combinationAsSet } from "../../bench/benchSetup";

/** What the exercise is set up for. */
export interface HoldbackSetup {
  readonly profile: Profile;
  readonly weight?: DialWeight;
}

/** What one round of it goes by. */
interface Round {
  readonly lock: HeldLock;
  readonly chart: ActorRefFrom<ReturnType<typeof holdbackMachine>>;
  readonly hand: HandSession<HoldbackEvent>;
}

/** A lock opened by a perfect hand, its dial at the positive stop. */
function openLock(profile: Profile, chance: Chance): HeldLock {
  const combination = combinationAsSet(profile, chance);
  const attempt = new Attempt(profile, combination, { dial: 0 });
  for (const stop of idealMotion(profile, combination, 0).slice(1)) attempt.turnBy(stop - attempt.dial);
  return new HeldLock(attempt);
}

function newRound({ profile, weight }: HoldbackSetup, chance: Chance): Round {
  const lock = openLock(profile, chance);
  const chart = createActor(holdbackMachine(profile.graduations)).start();
  return { lock, chart, hand: new HandSession<HoldbackEvent>(lock, { weight, chart }) };
}

/** A lock that stands open and its holdback slide, under a hand. A store outside React. */
export class HoldbackSession extends HandStore {
  private setup: HoldbackSetup;
  private round: Round;
  private readonly chance: Chance;

  constructor(setup: HoldbackSetup, chance: Chance) {
    super();
    this.setup = setup;
    this.chance = chance;
    this.round = newRound(setup, chance);
  }

  get profile(): Profile {
    return this.setup.profile;
  }

  get lock(): HeldLock {
    return this.round.lock;
  }

  get chart(): Round["chart"] {
    return this.round.chart;
  }

  slide(): void {
    const { lock, hand } = this.round;
    hand.did(lock.isHeld ? lock.releaseHoldback() : lock.setHoldback());
    this.changed();
  }

  /** Pushes the door shut and pulls at it. */
  pull(): void {
    const { lock, chart } = this.round;
    chart.send({ type: "door.pulled", isLocked: lock.locksDoor });
    this.changed();
  }

  takeLock(profile: Profile): void {
    this.setup = { ...this.setup, profile };
    this.again();
  }

  again(): void {
    this.round = newRound(this.setup, this.chance);
    this.changed();
  }

  protected get hand(): HandSession<HoldbackEvent> {
    return this.round.hand;
  }
}
