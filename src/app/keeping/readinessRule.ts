import { MASTERY_RULE, type MasteryRule, masteryRuleSchema } from "../../records/masteryRule";
import { Store } from "../parts/page/store";
import { useStore } from "../parts/page/useStore";
import { storedText, storeText } from "../parts/storage/pageStore";

const KEY = "gatefall.readiness";

/** The rule as it was stored; the usual one where there is none, or none that can be read. */
function storedRule(): MasteryRule {
  try {
    return masteryRuleSchema.parse(JSON.parse(storedText(KEY) ?? "null"));
  } catch {
    return MASTERY_RULE;
  }
}

/** When someone counts as ready on this device: chosen by the instructor, and remembered. A store. */
class ReadinessRule extends Store {
  private chosen: MasteryRule | null = null;

  get rule(): MasteryRule {
    this.chosen ??= storedRule();
    return this.chosen;
  }

  choose(rule: MasteryRule): void {
    this.chosen = rule;
    storeText(KEY, JSON.stringify(rule));
    this.changed();
  }
}

const readinessRule = new ReadinessRule();

/** The rule in force. */
export const currentRule = (): MasteryRule => readinessRule.rule;

/** The rule in force, and the way to choose another; redrawn with every choice. */
export function useReadinessRule() {
  const { rule } = useStore(readinessRule);
  return [rule, (next: MasteryRule) => readinessRule.choose(next)] as const;
}
