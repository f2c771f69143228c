import { drawVisit } from "../../../service/drawVisit";
import { answerTo } from "../../../service/holder";
import { Visit } from "../../../service/visit";
import type { VisitAct } from "../../../service/visitAct";
import type { Chance } from "../../../statistics/chance";
import { Store } from "../../parts/page/store";
import { ANSWER_WORDS, VISIT_HINDRANCE_WORDS, visitObservationText } from "./visitWords";

const SEEDS = 2 ** 31;

/** A service visit on the screen. A store outside React; how it goes on is the chart's. */
export class VisitSession extends Store {
  visit: Visit;
  /** What was answered and shown, latest first. */
  log: readonly string[] = [];
  private readonly chance: Chance;

  constructor(chance: Chance) {
    super();
    this.chance = chance;
    this.visit = this.newVisit();
  }

  /** @param label - of what is done, as its button says it */
  act(act: VisitAct, label: string): void {
    this.visit.act(act);
    this.log = [`${label}: ${this.told(act)}`, ...this.log];
    this.changed();
  }

  leave(): void {
    this.visit.leave();
    this.changed();
  }

  /** Another lock, another door. */
  again(): void {
    this.visit = this.newVisit();
    this.log = [];
    this.changed();
  }

  private newVisit(): Visit {
    return new Visit(drawVisit(Math.floor(this.chance() * SEEDS)), this.chance);
  }

  private told(act: VisitAct): string {
    const { stopped } = this.visit.chart.getSnapshot().context;
    if (stopped !== null) return VISIT_HINDRANCE_WORDS[stopped];
    if (act.type === "asked") return `"${ANSWER_WORDS[answerTo(act.question, this.visit.task.conditions)]}"`;
    const seen = this.visit.done.at(-1)?.showed ?? null;
    return seen === null ? "done." : visitObservationText(seen);
  }
}
