import { useId, useState } from "react";
import { ruleSentence } from "../../progress/masteryWords";
import { MASTERY_RULE, type MasteryRule, masteryRuleSchema, RULE_LIMITS } from "../../records/masteryRule";
import { useReadinessRule } from "../keeping/readinessRule";
import { Button } from "../parts/controls/Button";
import { NumberField } from "../parts/controls/NumberField";

/** A rule as it is typed. */
type Typed = { readonly [Field in keyof MasteryRule]: number | undefined };

const FIELDS: readonly { readonly field: keyof MasteryRule; readonly label: string; readonly unit: string }[] = [
  { field: "adequateFailureRate", label: "Good enough: misses at most", unit: "% of tries" },
  { field: "inadequateFailureRate", label: "Not good enough: misses", unit: "% of tries or more" },
  { field: "minimumAttempts", label: "At least", unit: "attempts or jobs" },
  { field: "lapseDays", label: "Lapses after", unit: "days without practice (empty: never)" },
];

const percent = (rate: number) => Number((100 * rate).toFixed(1));

const typedRule = (rule: MasteryRule): Typed => ({
  adequateFailureRate: percent(rule.adequateFailureRate),
  inadequateFailureRate: percent(rule.inadequateFailureRate),
  minimumAttempts: rule.minimumAttempts,
  lapseDays: rule.lapseDays ?? undefined,
});

/**
 * A rule as typed, or what to fix, in a sentence.
 *
 * Shares are typed in percent.
 */
export function ruleOf(typed: Typed): MasteryRule | string {
  const { minimumAttempts, lapseDays = null } = typed;
  const { adequateFailureRate: good = Number.NaN, inadequateFailureRate: bad = Number.NaN } = typed;
  if (!(good >= 1 && bad <= 90)) return "Enter shares of misses from 1 to 90 %.";
  if (!(bad > good)) return "The second share of misses must be larger than the first.";
  const rates = { adequateFailureRate: good / 100, inadequateFailureRate: bad / 100 };
  const made = masteryRuleSchema.safeParse({ ...rates, minimumAttempts, lapseDays });
  if (made.success) return made.data;
  const isDays = made.error.issues[0]?.path[0] === "lapseDays";
  return isDays
    ? `Enter whole days from 1 to ${RULE_LIMITS.days}, or leave the field empty.`
    : `Enter a whole number of attempts from 1 to ${RULE_LIMITS.attempts}.`;
}

/** What ready means here, and the way to choose it otherwise: the instructor's part. */
export function ReadinessSettings() {
  const id = useId();
  const [rule, choose] = useReadinessRule();
  const [typed, setTyped] = useState(() => typedRule(rule));
  const made = ruleOf(typed);
  const type = (next: Typed) => {
    setTyped(next);
    const found = ruleOf(next);
    if (typeof found !== "string") choose(found);
  };
  return (
    <>
      <p>{ruleSentence(rule)}</p>
      <details>
        <summary>Change what ready means</summary>
        <div className="grid gap-3 py-3">
          {FIELDS.map(({ field, label, unit }) => (
            <NumberField
              key={field}
              label={label}
              looks={{ field: "grid grid-cols-[minmax(0,200px)_72px_minmax(0,1fr)] items-center gap-x-4" }}
              value={typed[field]}
              describedBy={`${id}-told`}
              onNumber={(number) => type({ ...typed, [field]: number })}
            >
              <span>{unit}</span>
            </NumberField>
          ))}
        </div>
        <p id={`${id}-told`} role="status">
          {typeof made === "string" ? `${made} Until then the rule above counts.` : "Saved on this device as you type."}
        </p>
        <Button onClick={() => type(typedRule(MASTERY_RULE))}>Back to the usual rule</Button>
      </details>
    </>
  );
}
