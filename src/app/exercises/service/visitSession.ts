import type { Profile } from "../../../lock/profile";
import { answerTo } from "../../../service/holder";
import { type Visit, visitTo } from "../../../service/visit";
import { EMPTY_RECORD, type VisitAct, type VisitRecord } from "../../../service/visitAct";
import type { Chance } from "../../../statistics/chance";
import { drawSeed } from "../../../statistics/drawSeed";
import { TimedWork } from "../../keeping/timedWork";
import { actLabel } from "./visitActWords";
import { limitText } from "./visitPapersWords";
import { type VisitSetup, visitedProfile } from "./visitSetup";
import { ANSWER_WORDS, VISIT_HINDRANCE_WORDS, visitObservationText } from "./visitWords";

/** A service visit on the screen. A store outside React; how it goes on is the chart's. */
export class VisitSession extends TimedWork {
  setup: VisitSetup;
  profile: Profile;
  visit: Visit;
  /** What was answered and shown, latest first. */
  log: readonly string[] = [];
  /** Everything that was tried, what stood in the way of it too, in order: the visit again, act by act. */
  tried: readonly VisitAct[] = [];
  /** The record as it is marked; it counts once it is written. */
  draft: VisitRecord = EMPTY_RECORD;
  /** Grows with every visit begun: forms start empty with it. */
  round = 0;
  private readonly chance: Chance;

  /** @param profile - the lock, where it is none of the shipped ones */
  constructor(setup: VisitSetup, chance: Chance, profile: Profile = visitedProfile(setup)) {
    super();
    this.setup = setup;
    this.chance = chance;
    this.profile = profile;
    this.visit = visitTo(profile, setup.seed);
  }

  act(act: VisitAct): void {
    this.visit.act(act);
    this.tried = [...this.tried, act];
    this.log = [`${actLabel(act)}: ${this.told(act)}`, ...this.log];
    this.changed();
  }

  /** Goes on with a visit that was kept: every act again, which shows what it showed. */
  resume(acts: readonly VisitAct[]): void {
    for (const act of acts) this.act(act);
    this.log = ["You are back in your visit, where you left it.", ...this.log];
  }

  /** Marks something in the record. */
  write(draft: VisitRecord): void {
    this.draft = draft;
    this.changed();
  }

  leave(): void {
    this.visit.leave();
    this.changed();
  }

  /** Another lock or another amount of help: a visit of its own, to the same door where the lock stays. */
  change(changes: Partial<Omit<VisitSetup, "seed">>): void {
    this.begin({ ...this.setup, ...changes });
  }

  /** Another lock, another door. */
  again(): void {
    this.begin({ ...this.setup, seed: drawSeed(this.chance) });
  }

  private begin(setup: VisitSetup): void {
    this.setup = setup;
    this.profile = visitedProfile(setup);
    this.visit = visitTo(this.profile, setup.seed);
    this.log = [];
    this.tried = [];
    this.draft = EMPTY_RECORD;
    this.begunAt = null;
    this.round += 1;
    this.changed();
  }

  private told(act: VisitAct): string {
    const { stopped } = this.visit.chart.getSnapshot().context;
    if (stopped !== null) return VISIT_HINDRANCE_WORDS[stopped];
    if (act.type === "asked") return `"${ANSWER_WORDS[answerTo(act.question, this.visit.task.conditions)]}"`;
    const seen = this.visit.done.at(-1)?.showed ?? null;
    if (seen === null) return "done.";
    const limit = this.setup.help === "full" ? limitText(seen, this.visit) : "";
    return `${visitObservationText(seen)} ${limit}`.trim();
  }
}
