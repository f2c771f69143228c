import { useMemo } from "react";
import { practiceSheet } from "../../../progress/practiceSheet";
import { REFRESH_NOTE } from "../../../progress/refresh";
import { whatNext } from "../../../progress/whatNext";
import type { Hand } from "../../../realdial/sources/handOf";
import type { AttemptRecord } from "../../../records/attemptRecord";
import type { JobRecord } from "../../../records/jobRecord";
import type { MasteryRule } from "../../../records/masteryRule";
import type { DeclarationRecord } from "../../../records/records";
import { runLink, type SuggestionRow, suggestionRow } from "./suggestionRows";

function Links({ links }: Pick<SuggestionRow, "links">) {
  return (
    <span className="row">
      {links.map(({ address, label }) => (
        <a key={address} className="button slim" href={address}>
          {label}
        </a>
      ))}
    </span>
  );
}

interface WhatNextPanelProps {
  /** Of one person, oldest first. */
  readonly attempts: readonly AttemptRecord[];
  readonly declarations: readonly DeclarationRecord[];
  /** Of that person, oldest first. */
  readonly jobs: readonly JobRecord[];
  /** When someone counts as ready. */
  readonly rule: MasteryRule;
  /** The hand whose tries count. */
  readonly hand: Hand;
}

/** What to practice next, with the reason: an offer, nothing is locked. */
export function WhatNextPanel({ attempts, declarations, jobs, rule, hand }: WhatNextPanelProps) {
  const { suggestions, order, orderReason, run } = useMemo(() => {
    const now = new Date();
    const next = whatNext(attempts, declarations, now.getTime(), now.getTimezoneOffset(), jobs, rule, hand);
    return { ...next, run: runLink(practiceSheet(next.suggestions, next.order), (tries) => `Start ${tries} tries`) };
  }, [attempts, declarations, jobs, rule, hand]);
  return (
    <section className="card" aria-labelledby="what-next">
      <h2 id="what-next">What next</h2>
      {suggestions.length === 0 && <p>You are ready at everything you practiced, and nothing is due.</p>}
      <ul className="plain stack">
        {suggestions.map(suggestionRow).map(({ key, title, reason, links }) => (
          <li className="row gap-x-4 gap-y-2" key={key}>
            <span>
              <b>{title}.</b> {reason}
            </span>
            <Links links={links} />
          </li>
        ))}
      </ul>
      <p className="row gap-x-4 gap-y-2">
        <span className="text-soft">
          Order of practice: {order}. {orderReason}
        </span>
        <Links links={run} />
      </p>
      <details className="figure-note">
        <summary>How this is worked out</summary>
        <p>First your misses, then what you are not ready at yet, then what is due again. {REFRESH_NOTE}</p>
      </details>
    </section>
  );
}
