import { type ActorRefFrom, createActor } from "xstate";
import type { Help } from "../../../../dialing/advice";
import type { DialingFact } from "../../../../dialing/dialingFact";
import { type DialingState, dialingMachine } from "../../../../dialing/dialingMachine";
import type { DialWeight } from "../../../../dialing/hand/dialFeel";
import { HandSession } from "../../../../dialing/hand/handSession";
import { spunOffStart } from "../../../../dialing/spunOffStart";
import { drawCombination } from "../../../../drill/drawCombination";
import type { ChangeState } from "../../../../handover/change/changeAdvice";
import { canBeChanged, takesKey } from "../../../../handover/change/changeProfile";
import { EncoderChange } from "../../../../handover/change/encoderChange";
import { encoderChangeMachine } from "../../../../handover/change/encoderChangeMachine";
import { type KeyAnswer, PackChange } from "../../../../handover/change/packChange";
import { packChangeMachine } from "../../../../handover/change/packChangeMachine";
import type { Change } from "../../../../handover/change/tellChange";
import type { Combination } from "../../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import type { Chance } from "../../../../statistics/chance";
import { HandStore } from "../../../hand/handStore";
import { combinationAsSet } from "../../bench/benchSetup";
import type { Act, RefusedAct } from "./changeWords";

/** Locks whose combination can be changed. */
export const CHANGEABLE: readonly Profile[] = SHIPPED_PROFILES.filter(canBeChanged);

/** What the exercise is asked for. */
export interface ChangeSpec {
  readonly profile: Profile;
  readonly help: Help;
  /** The new combination; drawn by the rules where left out. */
  readonly wanted?: Combination | null;
  readonly weight?: DialWeight;
}

/** What the exercise is set up for. */
export interface ChangeSetup {
  readonly profile: Profile;
  readonly present: Combination;
  readonly wanted: Combination;
  readonly isOwn: boolean;
}

type Round =
  | {
      readonly kind: "key";
      readonly change: PackChange;
      readonly chart: ActorRefFrom<typeof packChangeMachine>;
    }
  | {
      readonly kind: "dial";
      readonly change: EncoderChange;
      readonly chart: ActorRefFrom<typeof encoderChangeMachine>;
    };

/**
 * A change of combination on the screen: the lock, its charts, and what was refused last.
 *
 * A store outside React. It asks nobody for time or chance: both are handed in.
 */
export class ChangeSession extends HandStore {
  setup: ChangeSetup;
  help: Help;
  /** Why the last act did nothing, or null where it did something. */
  refused: RefusedAct | null = null;
  private round: Round;
  private dialer: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  protected hand: HandSession<DialingFact>;
  private readonly chance: Chance;
  private readonly weight: DialWeight;

  constructor({ profile, help, wanted = null, weight = "usual" }: ChangeSpec, chance: Chance) {
    super();
    this.chance = chance;
    this.help = help;
    this.weight = weight;
    const drawn = this.drawnFor(profile);
    this.setup = { ...drawn, wanted: wanted ?? drawn.wanted };
    this.round = this.newRound();
    this.dialer = createActor(dialingMachine(profile)).start();
    this.hand = this.takeHold();
  }

  get change(): Change {
    return this.round.change;
  }

  get state(): ChangeState {
    return this.round.chart.getSnapshot().value;
  }

  get dialing(): DialingState {
    return this.dialer.getSnapshot().value;
  }

  act(act: Act): void {
    this.refused = null;
    const before = this.change.hand;
    if (this.round.kind === "key") this.actWithKey(this.round, act);
    else this.actOnDial(this.round, act);
    this.followHand(before);
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
    this.round = this.newRound();
    this.dialer.stop();
    this.dialer = createActor(dialingMachine(setup.profile)).start();
    this.hand = this.takeHold();
    this.refused = null;
    this.changed();
  }

  private drawnFor(profile: Profile): ChangeSetup {
    const present = combinationAsSet(profile, this.chance);
    return { profile, present, wanted: drawCombination(profile, this.chance), isOwn: false };
  }

  private newRound(): Round {
    const { profile, present, wanted } = this.setup;
    const { dial, slack = [] } = spunOffStart(profile, present, this.chance);
    if (takesKey(profile)) {
      const change = new PackChange(profile, present, wanted, { dial, slack, engagedAt: null });
      return { kind: "key", change, chart: createActor(packChangeMachine).start() };
    }
    if (profile.kind !== "dial-encoder") throw new TypeError(`${profile.id} takes no change key`);
    const change = new EncoderChange(profile, present, wanted, { dial });
    return { kind: "dial", change, chart: createActor(encoderChangeMachine).start() };
  }

  private takeHold(): HandSession<DialingFact> {
    const change = () => this.change;
    let before = change().hand;
    return new HandSession<DialingFact>(
      {
        get dial() {
          return change().dial;
        },
        turnBy: (by, at) => {
          before = change().hand;
          return this.turnRound(by, at);
        },
      },
      {
        weight: this.weight,
        chart: this.dialer,
        isClosed: () => change().isDoorShut,
        heard: () => this.followHand(before),
      },
    );
  }

  private turnRound(by: Graduations, now: Milliseconds): readonly DialingFact[] {
    if (by !== 0) this.refused = null;
    if (this.round.kind === "key") {
      const { dialing, change } = this.round.change.turnBy(by, now);
      for (const fact of change) this.round.chart.send(fact);
      return dialing;
    }
    const { dialing, change } = this.round.change.turnBy(by, now);
    for (const fact of change) this.round.chart.send(fact);
    return dialing;
  }

  /** Where the hand is read anew, the chart of the dialing begins anew. */
  private followHand(before: Change["hand"]): void {
    if (this.change.hand !== before) this.dialer.send({ type: "attempt.restarted" });
  }

  private actWithKey({ change, chart }: Extract<Round, { kind: "key" }>, act: Act): void {
    const acts: Partial<Record<Act, () => KeyAnswer>> = {
      insertKey: () => change.insertKey(),
      turnKey: () => change.turnKey(),
      turnKeyBack: () => change.turnKeyBack(),
      withdrawKey: () => change.withdrawKey(),
      changeAgain: () => ({ facts: change.changeAgain(), refusal: null }),
      shutDoor: () => ({ facts: change.shutDoor(), refusal: null }),
    };
    const answer = acts[act]?.();
    for (const fact of answer?.facts ?? []) chart.send(fact);
    this.refused = answer?.refusal ?? (act === "shutDoor" && !change.isDoorShut ? "key-in-door" : null);
  }

  private actOnDial({ change, chart }: Extract<Round, { kind: "dial" }>, act: Act): void {
    const answer = act === "shutDoor" ? { facts: change.shutDoor(), refusal: null } : change.pressButton();
    for (const fact of answer.facts) chart.send(fact);
    this.refused = answer.refusal;
  }
}
