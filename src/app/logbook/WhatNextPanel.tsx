import { useMemo } from "react";
import type { AttemptRecord } from "../../logbook/attemptRecord";
import type { JobRecord } from "../../logbook/jobRecord";
import { practiceSheet } from "../../logbook/practiceSheet";
import type { DeclarationRecord } from "../../logbook/records";
import { whatNext } from "../../logbook/whatNext";
import { runLink, type SuggestionRow, suggestionRow } from "./suggestionRows";

function Links({ links }: Pick<SuggestionRow, "links">) {
  return (
    <span className="what-next-links">
      {links.map(({ address, label }) => (
        <a key={address} className="button" href={address}>
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
}

/** What to practice next, with the reason: an offer, nothing is locked. */
export function WhatNextPanel({ attempts, declarations, jobs }: WhatNextPanelProps) {
  const { suggestions, order, orderReason, run } = useMemo(() => {
    const now = new Date();
    const next = whatNext(attempts, declarations, now.getTime(), now.getTimezoneOffset(), jobs);
    return { ...next, run: runLink(practiceSheet(next.suggestions, next.order), (tries) => `A run of ${tries} tries`) };
  }, [attempts, declarations, jobs]);
  return (
    <section className="figure what-next" aria-labelledby="what-next">
      <h2 id="what-next">What next</h2>
      {suggestions.length === 0 && <p>All you practiced is shown, and nothing is due. Come back when you like.</p>}
      <ul>
        {suggestions.map(suggestionRow).map(({ key, title, reason, links }) => (
          <li key={key}>
            <span>
              <b>{title}.</b> {reason}
            </span>
            <Links links={links} />
          </li>
        ))}
      </ul>
      <p>
        <span className="logbook-soft">
          Order of practice: {order}. {orderReason}
        </span>
        <Links links={run} />
      </p>
    </section>
  );
}
