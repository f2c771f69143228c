import type { Profile } from "../../../lock/profile";
import type { Mastery } from "../../../progress/mastery";
import type { ProgressMeasure } from "../../../progress/stops/progressMeasure";
import type { AttemptRecord } from "../../../records/attemptRecord";
import type { Skill } from "../../../records/skill";
import type { FigureModel } from "../../pictures/charts/figureModel";
import { chanceFigure } from "./chanceFigure";
import { controlFigure } from "./controlFigure";
import { estimateFigure } from "./estimateFigure";
import { heatFigure } from "./heatFigure";
import { learningFigure } from "./learningFigure";
import { masteryFigure } from "./masteryFigure";
import { openingsFigure } from "./openingsFigure";
import { stopErrorsFigure } from "./stopErrorsFigure";
import { throughputFigure } from "./throughputFigure";

/** What the wheels, or the encoder, let pass: the narrowest of the lock's tolerances, graduations. */
export function toleranceOf(profile: Profile): number {
  return profile.kind === "wheel-pack" ? Math.min(...profile.wheelPack.gateTolerance) : profile.stopTolerance;
}

/** One skill of one person. */
export interface SkillProgress {
  readonly skill: Skill;
  readonly profile: Profile;
  /** At this skill, oldest first. */
  readonly attempts: readonly AttemptRecord[];
  /** Over all attempts, not the latest alone. */
  readonly mastery: Mastery;
}

/** The views that do not hang on a measure. */
export function progressFigures({ profile, attempts, mastery }: SkillProgress): FigureModel[] {
  const tolerance = toleranceOf(profile);
  return [
    openingsFigure(attempts),
    stopErrorsFigure(attempts, tolerance),
    heatFigure(attempts, profile.graduations),
    chanceFigure(attempts, tolerance),
    throughputFigure(attempts),
    estimateFigure(attempts),
    masteryFigure(mastery),
  ];
}

/** The views of one measure over the attempts. */
export function measureFigures(
  attempts: readonly AttemptRecord[],
  measure: ProgressMeasure,
): [FigureModel, FigureModel] {
  return [controlFigure(attempts, measure), learningFigure(attempts, measure)];
}
