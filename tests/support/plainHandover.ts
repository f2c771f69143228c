import type { HandoverEvent } from "../../src/handover/run/rules/handoverEvent";
import type { Situation } from "../../src/handover/run/rules/situation";

type Mutable = { -readonly [Key in keyof Situation]: Situation[Key] };

/** What an event does, told plainly. */
export interface PlainStep {
  readonly situation: Situation;
  readonly faults: readonly string[];
  readonly isHandedOver: boolean;
}

const WITH_LOCK = /^(ring|zero|combination|pack|bolt|lock\.spun|holdback\.set|door\.shut)/;

const TIMES = ["none", "once", "twice", "thrice"] as const;

/**
 * The handover told once more, from the words of the job alone, in plain statements: it shares no condition, no table
 * and no chart with the code under test.
 */
class PlainHandover {
  readonly now: Mutable;
  readonly faults: string[] = [];
  isHandedOver = false;

  constructor(situation: Situation) {
    this.now = { ...situation };
  }

  private get isLatched() {
    return this.now.door === "shut" && this.now.bolt !== "retracted";
  }
  private get readsTrue() {
    return this.now.ring === "aligned" && (this.now.zero === "byRing" || this.now.zero === "bothSet");
  }
  private get isShown() {
    return this.now.door === "open" && this.now.holdback === "off" && this.readsTrue;
  }

  private get isUsable() {
    if (this.now.asWritten !== "unknown") return this.now.asWritten === "opens";
    return this.readsTrue && (this.now.combination === "shipped" || this.now.combination === "ownTrue");
  }

  take(event: HandoverEvent & { readonly opensAsWritten?: boolean | undefined }): void {
    this.act(event);
    if (this.isHandedOver) return;
    if (event.opensAsWritten !== undefined && event.type !== "lock.takenApart")
      this.now.asWritten = event.opensAsWritten ? "opens" : "useless";
    const isSafe = this.now.inside === "nobody" || (this.now.inside === "able" && this.now.wayOut === "free");
    this.trap(this.isLatched && !isSafe);
    const isHelped = this.now.inside === "able" && this.now.wayOut !== "blocked";
    this.bar(this.isLatched && !this.isUsable && !isHelped);
  }

  private trap(isShutIn: boolean) {
    this.blame("shut-in", isShutIn && this.now.escape === "free");
    this.now.escape = isShutIn ? "shutIn" : "free";
  }

  private bar(isLockedOut: boolean) {
    this.blame("locked-out", isLockedOut && this.now.entry === "free");
    this.now.entry = isLockedOut ? "lockedOut" : "free";
  }

  private blame(code: string, isSo: boolean) {
    if (isSo) this.faults.push(code);
  }

  private voidProofs() {
    Object.assign(this.now, { proofs: "none", second: "unproved", observed: "notYet", outside: "unproved" });
    this.now.record = "unwritten";
  }

  private act(event: HandoverEvent): void {
    const { now } = this;
    // Nothing can be done with a lock that is in parts, and nobody shuts its door.
    if (now.fit === "apart" && WITH_LOCK.test(event.type)) return;
    const acts: { readonly [Type in HandoverEvent["type"]]: (event: Extract<HandoverEvent, { type: Type }>) => void } =
      {
        "lock.fitted": ({ isFaultless, isChecked }) => {
          if (now.fit !== "apart") return;
          this.blame("fit-unchecked", !isChecked);
          Object.assign(now, { fit: isFaultless ? "faultless" : "faulty", fitChecks: isChecked ? "made" : "unmade" });
        },
        "lock.takenApart": () => this.takeApart(),
        "parts.replaced": () => this.blame("parts-spoiled", now.fit === "apart"),
        "mounting.measured": ({ height_in }) => {
          if (now.mounting === "unchecked") now.mounting = height_in < 34 || height_in > 48 ? "outOfRange" : "inRange";
        },
        "authorization.asked": () => {
          if (now.mounting === "outOfRange") now.mounting = "authorized";
        },
        "ring.aligned": () => this.align(),
        "ring.loosened": () => this.loosen(),
        "zero.set": ({ side }) => this.setZero(side),
        "combination.dialed": ({ by, opened }) => this.dial(by, opened),
        "combination.changed": ({ outcome, isAllowed }) => this.change(outcome, isAllowed),
        "pack.rebuilt": () => {
          if (now.door === "open" && now.combination === "spoiled")
            Object.assign(now, { combination: "shipped", shippedTry: "untried", rules: "notChosen" });
        },
        "bolt.thrown": () => now.bolt === "retracted" && this.throwBolt("thrown"),
        "bolt.drawnAgain": () => {
          if (now.bolt === "thrown" && now.holdback === "off" && now.combination !== "spoiled") now.bolt = "retracted";
        },
        "lock.spunOff": () => this.throwBolt("spunOff"),
        "holdback.set": () => this.holdBack(),
        "holdback.released": () => this.release(),
        "observer.entered": ({ canOpen }) => {
          if (now.door === "open" && now.inside === "nobody") now.inside = canOpen ? "able" : "unable";
        },
        "observer.left": () => {
          if (now.door === "open") now.inside = "nobody";
        },
        "wayOut.checked": ({ isFree }) => {
          if (now.door === "open" && now.wayOut !== "blocked") now.wayOut = isFree ? "free" : "blocked";
        },
        "wayOut.cleared": () => {
          if (now.door === "open" && now.wayOut === "blocked") now.wayOut = "unchecked";
        },
        "release.failed": () => {
          if (this.isLatched && now.inside !== "nobody" && now.wayOut === "unchecked") now.wayOut = "blocked";
        },
        "door.shut": () => now.door === "open" && this.shut(),
        "door.opened": ({ by }) => this.open(by),
        "record.written": () => {
          this.blame("recorded-early", !this.isProved);
          if (this.isProved) now.record = "written";
        },
        "record.refused": () => this.blame("combination-in-record", true),
        "duty.signed": () => this.sign(),
      };
    (acts[event.type] as (event: HandoverEvent) => void)(event);
  }

  private takeApart() {
    const { now } = this;
    const isFitted = now.fit === "faultless" || now.fit === "faulty";
    if (!isFitted || now.door === "shut" || now.holdback === "on") return;
    this.blame("taken-apart", now.ring === "aligned");
    Object.assign(now, { fit: "apart", fitChecks: "unmade", ring: "loose", bolt: "thrown", asWritten: "unknown" });
    if (now.zero !== "byRing") now.zero = "notSet";
    this.voidProofs();
  }

  private align() {
    const { now } = this;
    if (now.ring === "aligned") return;
    this.blame("aligned-unmeasured", now.mounting === "unchecked" || now.mounting === "outOfRange");
    now.ring = "aligned";
  }

  private loosen() {
    const { now } = this;
    if (now.ring === "loose") return;
    const hasZero = now.zero !== "notSet" && now.zero !== "byRing";
    this.blame("ring-moved", hasZero || now.shippedTry === "tried" || now.proofs !== "none");
    now.ring = "loose";
    if (now.zero !== "byRing") now.zero = "notSet";
    this.voidProofs();
  }

  private throwBolt(to: "thrown" | "spunOff") {
    this.blame("held-back-turned", this.now.holdback === "on");
    if (this.now.holdback === "off") this.now.bolt = to;
  }

  private holdBack() {
    const { now } = this;
    if (now.door === "shut" || now.holdback === "on" || now.bolt !== "retracted") return;
    now.holdback = "on";
    if (now.shown === "neither") now.shown = "set";
  }

  private release() {
    const { now } = this;
    if (now.door === "shut" || now.holdback === "off") return;
    now.holdback = "off";
    if (now.shown === "set") now.shown = "bothWays";
  }

  private setZero(side: "left" | "right") {
    const { now } = this;
    if (now.zero === "byRing" || now.door === "shut") return;
    this.blame("zeroed-on-loose-ring", now.ring === "loose");
    if (now.ring === "loose") return;
    const other = side === "left" ? "rightSet" : "leftSet";
    if (now.zero === "notSet") now.zero = side === "left" ? "leftSet" : "rightSet";
    else if (now.zero === other) now.zero = "bothSet";
  }

  private dial(by: "trainee" | "second", opened: boolean) {
    const { now } = this;
    if (opened && now.combination === "spoiled") return;
    this.blameDialing(by);
    if (now.door === "shut") this.proveOutside(opened);
    else if (by === "second") this.proveBySecond(opened);
    else this.countProof(opened, now.combination === "ownTrue");
    if (opened && now.combination === "shipped" && this.isShown) now.shippedTry = "tried";
    if (now.holdback === "off") now.bolt = opened ? "retracted" : "thrown";
  }

  private blameDialing(by: "trainee" | "second") {
    const { now } = this;
    const isOwn = now.combination !== "shipped";
    this.blame("dialed-untrue", !this.readsTrue);
    this.blame("proved-held-back", now.holdback === "on");
    this.blame("second-too-early", by === "second" && now.door === "open" && isOwn && now.proofs !== "thrice");
    this.blame("proved-not-spun-off", now.door === "shut" && now.bolt !== "spunOff");
  }

  private proveOutside(opened: boolean) {
    const { now } = this;
    if (opened && now.combination === "ownTrue" && now.bolt === "spunOff" && this.readsTrue) now.outside = "proved";
  }

  private proveBySecond(opened: boolean) {
    const { now } = this;
    if (opened && now.combination === "ownTrue" && this.isShown && now.proofs === "thrice") now.second = "proved";
  }

  private countProof(opened: boolean, isTrue: boolean) {
    const { now } = this;
    if (now.proofs === "thrice") return;
    if (!opened) now.proofs = "none";
    else if (isTrue && this.isShown) now.proofs = TIMES[TIMES.indexOf(now.proofs) + 1] ?? "thrice";
  }

  private change(outcome: "true" | "off" | "spoiled", isAllowed: boolean) {
    const { now } = this;
    if (now.door === "shut" || now.combination === "spoiled") return;
    this.blame("changed-untrue", !this.readsTrue);
    this.blame("changed-untried", now.combination === "shipped" && now.shippedTry === "untried");
    this.blame("rules-broken", !isAllowed);
    this.blame("set-off", outcome === "off");
    this.blame("pack-spoiled", outcome === "spoiled");
    now.combination = outcome === "true" ? "ownTrue" : outcome === "off" ? "ownOff" : "spoiled";
    now.rules = isAllowed ? "kept" : "broken";
    this.voidProofs();
  }

  private shut() {
    const { now } = this;
    this.blameShutting();
    const isReady = now.combination === "ownTrue" && now.proofs === "thrice" && now.holdback === "off";
    if (isReady && now.inside === "able" && now.wayOut === "free") now.observed = "done";
    now.door = "shut";
  }

  private blameShutting() {
    const { now } = this;
    const isOwn = now.combination !== "shipped";
    const isThrice = now.proofs === "thrice";
    this.blame("shut-unproved", !isThrice && (isOwn || now.shippedTry === "untried"));
    this.blame("shut-without-second", isOwn && isThrice && now.second === "unproved");
    this.blame("shut-unobserved", now.inside !== "able" && now.outside === "unproved");
    this.blame("shut-not-spun-off", now.bolt !== "spunOff" && now.holdback === "off");
    this.blame("shut-held-back", now.holdback === "on");
  }

  private open(by: "outside" | "inside" | "emergency") {
    const { now } = this;
    if (now.door === "open") return;
    const isHelped = now.inside === "able" && now.wayOut !== "blocked";
    if (by === "emergency" ? !this.isLatched : by === "outside" ? this.isLatched : !isHelped) return;
    this.blame("opened-by-force", by === "emergency");
    now.door = "open";
  }

  private get isProved() {
    const { now } = this;
    return [
      now.fit === "asFound" || now.fitChecks === "made",
      now.mounting === "inRange" || now.mounting === "authorized",
      this.readsTrue,
      now.shippedTry === "tried",
      now.combination === "ownTrue" && now.rules === "kept",
      now.proofs === "thrice" && now.second === "proved",
      now.wayOut === "free",
      now.observed === "done" && now.outside === "proved",
      now.shown === "bothWays",
    ].every(Boolean);
  }

  private sign() {
    const { now } = this;
    const isLeftWell = now.holdback === "off" && now.bolt === "spunOff" && now.inside === "nobody";
    this.isHandedOver = this.isProved && isLeftWell && now.record === "written";
    this.blame("bad-fit-left", this.isHandedOver && now.fit === "faulty");
    this.blame("shipped-left", now.combination === "shipped");
    this.blame("holdback-left-on", now.holdback === "on");
    this.blame("someone-left-inside", now.inside !== "nobody");
    this.blame("signed-too-early", !this.isHandedOver);
  }
}

/** What an event does in a situation, by the plain telling. */
export function plainStep(situation: Situation, event: HandoverEvent): PlainStep {
  const plain = new PlainHandover(situation);
  plain.take(event);
  return { situation: plain.now, faults: plain.faults, isHandedOver: plain.isHandedOver };
}
