import { type Followed, TakeOver } from "../../../../../realdial/motion/takeOver";
import type { ShownSighting } from "../../../../../realdial/printed/shownDial";
import type { Problem } from "../../../../../wording/problem";
import { deviceProblem } from "../deviceWords";
import type { DeviceLink } from "../dialDevice";
import { halfText } from "../shownPlace";
import { sightProblem } from "./sightProblem";

/** So long without a dial on the screen that it could turn, a camera is not in use any more, ms: time to read a sitting's instructions. */
const UNUSED_AFTER = 180_000;

/** So often it is looked whether pictures still come, ms, */
const LOOKS_EVERY = 250;
/** and after so many looks without one none does: counted, since a page that was busy has pictures waiting when it looks again. */
const STILL_AFTER = 4;

/** The way from what is seen of a dial to the dial on the screen. Mutable. */
export class SightedTurns {
  /** Whether it has turned the dial on the screen. */
  hasTakenOver = false;
  private readonly link: DeviceLink;
  private readonly takeOver = new TakeOver();
  /** What keeps it from turning the dial, as it was told last. */
  private held = "";
  private isFollowing = false;
  /** Since when no dial has been on the screen, ms; null while one is. */
  private unusedSince: number | null = null;
  /** Looks since the last picture; null while none is waited for. */
  private looks: number | null = null;

  constructor(link: DeviceLink) {
    this.link = link;
  }

  /** @param refused - why the dial on the screen must not be turned, however well this one is seen */
  take(sighting: ShownSighting, refused: Problem | null = null): void {
    this.looks = 0;
    if (this.isUnused(sighting.at)) this.link.lost(deviceProblem("unused", []));
    else if (refused === null) this.follow(sighting);
    else {
      this.comeApart();
      this.hold(refused);
    }
  }

  private follow(sighting: ShownSighting): void {
    const screen = this.link.shown();
    const followed = this.takeOver.take(sighting, screen === null ? null : screen.turns);
    this.hold(this.whyHeld(followed, sighting));
    // At once, and not only when it is back: an attempt may end meanwhile.
    if (this.isFollowing && followed.state !== "follows") this.link.marked("sight-lost");
    this.isFollowing = followed.state === "follows";
    if (followed.state !== "follows") return;
    this.hasTakenOver = true;
    if (followed.hasComeBack) this.link.doubted(deviceProblem("sight-lost", []));
    if (followed.turns !== null) this.link.turned(followed.turns, sighting.at);
  }

  /** The dial is set up anew: until then it turns nothing, and this is why. */
  setUpAgain(): void {
    this.looks = null;
    this.comeApart();
    this.hold(deviceProblem("set-up-again", []));
  }

  /** The dial on the screen is not where this one left it: they have to come to one number. */
  comeApart(): void {
    this.isFollowing = false;
    this.takeOver.comeApart();
  }

  /** Tells where no more pictures come, or nothing reads them any more: neither says so by itself. @returns looks no more */
  watch(): () => void {
    const timer = setInterval(() => this.look(), LOOKS_EVERY);
    return () => clearInterval(timer);
  }

  private look(): void {
    if (this.looks === null) return;
    this.looks += 1;
    if (this.looks !== STILL_AFTER) return;
    if (this.isFollowing) this.link.marked("sight-lost");
    this.isFollowing = false;
    this.hold(deviceProblem("no-pictures", []));
  }

  private isUnused(now: number): boolean {
    this.unusedSince = this.link.shown() === null ? (this.unusedSince ?? now) : null;
    return this.unusedSince !== null && now - this.unusedSince > UNUSED_AFTER;
  }

  private whyHeld(followed: Followed, { shown }: ShownSighting): Problem | null {
    if (followed.state === "lost") return sightProblem(followed.reason, shown);
    const screen = this.link.shown();
    if (followed.state === "follows" || screen === null) return null;
    return deviceProblem("come-to", [], { number: halfText(screen) });
  }

  /** Tells what keeps it from turning the dial, where that has become another. */
  private hold(why: Problem | null): void {
    const told = why === null ? "" : JSON.stringify(why);
    if (told === this.held) return;
    this.held = told;
    this.link.held(why);
  }
}
