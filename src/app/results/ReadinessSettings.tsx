import { useId, useState } from "react";
import { ruleSentence } from "../../progress/masteryWords";
import { MASTERY_RULE, type MasteryRule, masteryRuleSchema, RULE_LIMITS } from "../../records/masteryRule";
import { useReadinessRule } from "../keeping/readinessRule";

/** A rule as it is typed. */
type Typed = { readonly [Field in keyof MasteryRule]: string };

const FIELDS: readonly { readonly field: keyof MasteryRule; readonly label: string; readonly unit: string }[] = [
  { field: "adequateFailureRate", label: "Good enough: misses at most", unit: "% of tries" },
  { field: "inadequateFailureRate", label: "Not good enough: misses", unit: "% of tries or more" },
  { field: "minimumAttempts", label: "At least", unit: "attempts or jobs" },
  { field: "lapseDays", label: "Lapses after", unit: "days without practice (empty: never)" },
];

const percent = (rate: number) => String(Number((100 * rate).toFixed(1)));

const typedRule = (rule: MasteryRule): Typed => ({
  adequateFailureRate: percent(rule.adequateFailureRate),
  inadequateFailureRate: percent(rule.inadequateFailureRate),
  minimumAttempts: String(rule.minimumAttempts),
  lapseDays: rule.lapseDays === null ? "" : String(rule.lapseDays),
});

/** A number as typed, with a comma or a point; an empty field is none. */
const numberOf = (text: string) => (text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", ".")));

/**
 * A rule as typed, or what to fix, in a sentence.
 *
 * Shares are typed in percent.
 */
export function ruleOf(typed: Typed): MasteryRule | string {
  const [good, bad] = [numberOf(typed.adequateFailureRate), numberOf(typed.inadequateFailureRate)];
  if (!(good >= 1 && bad <= 90)) return "Enter shares of misses from 1 to 90 %.";
  if (!(bad > good)) return "The second share of misses must be larger than the first.";
  const least = numberOf(typed.minimumAttempts);
  const days = typed.lapseDays.trim() === "" ? null : numberOf(typed.lapseDays);
  const made = masteryRuleSchema.safeParse({
    adequateFailureRate: good / 100,
    inadequateFailureRate: bad / 100,
    minimumAttempts: least,
    lapseDays: days,
  });
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
            <p className="grid grid-cols-[minmax(0,200px)_minmax(0,1fr)] items-center gap-x-4" key={field}>
              <label htmlFor={`${id}-${field}`}>{label}</label>
              <span>
                <input
                  id={`${id}-${field}`}
                  className="field w-[72px]"
                  inputMode="decimal"
                  autoComplete="off"
                  value={typed[field]}
                  aria-describedby={`${id}-told`}
                  onChange={({ currentTarget: { value } }) => type({ ...typed, [field]: value })}
                />{" "}
                {unit}
              </span>
            </p>
          ))}
        </div>
        <p id={`${id}-told`} role="status">
          {typeof made === "string" ? `${made} Until then the rule above counts.` : "Saved on this device as you type."}
        </p>
        <button type="button" className="button" onClick={() => type(typedRule(MASTERY_RULE))}>
          Back to the usual rule
        </button>
      </details>
    </>
  );
}
