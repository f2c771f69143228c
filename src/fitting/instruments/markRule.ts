import { exact } from "../../lock/exact";
import { FITTING } from "../trainingValues";

/** A rule that lies across two opposite marks of the ring, over the dial's middle. */
export interface RuleReading {
  /** The line of the rule that lies at the one mark, millimeters: not its end, which wears. */
  readonly from_mm: number;
  /** Where the opposite mark is on the rule, to the nearest of its lines, millimeters. */
  readonly to_mm: number;
}

/** What a rule tells apart, millimeters. */
export const RULE_STEP_mm = FITTING.ruleStep_mm;

/**
 * Lays a rule across two opposite marks of a ring.
 *
 * @param radius_mm - of the marks, > 0
 */
export function layRule(radius_mm: number): RuleReading {
  const from_mm = FITTING.ruleFrom_mm;
  return { from_mm, to_mm: Math.round((from_mm + 2 * radius_mm) / RULE_STEP_mm) * RULE_STEP_mm };
}

/** The radius by a reading: half of what lies between the marks, millimeters. Geometry: a diameter is two radii. */
export const radiusBy = ({ from_mm, to_mm }: RuleReading): number => (to_mm - from_mm) / 2;

/** Whether a radius that somebody reckoned is what the rule shows, within one line at either end. */
export const agreesWithRule = (own_mm: number, laid: RuleReading): boolean =>
  exact(Math.abs(own_mm - radiusBy(laid))) <= RULE_STEP_mm;
