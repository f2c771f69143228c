import { useEffect, useRef } from "react";
import { markingScheme, schemeAdvice, schemeRows } from "../../drill/marking/markingScheme";
import type { Sheet } from "../../drill/sheet/sheet";
import { NOTICE } from "../../drill/sittingRecord";
import type { SittingSession } from "./sittingSession";
import { ruleSentences, stationRow } from "./sittingWords";
import { TextTable } from "./TextTable";

function Sentences({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ul className="sitting-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

function Scheme({ sheet }: { readonly sheet: Sheet }) {
  const scheme = markingScheme(sheet);
  const [heads = [], ...rows] = schemeRows(scheme);
  return (
    <section aria-label="Marking scheme">
      <h2>Marking scheme {rows.length > 0 && <small>nothing else is marked</small>}</h2>
      {rows.length === 0 ? <p>Nothing is marked; this is practice.</p> : <TextTable heads={heads} rows={rows} />}
      {schemeAdvice(scheme).map((line) => (
        <p key={line} className="sitting-soft">
          {line}
        </p>
      ))}
    </section>
  );
}

function StartButtons({ session, onLeave }: BeforeStartProps) {
  const isReady = session.state === "ready";
  const start = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isReady) start.current?.focus();
  }, [isReady]);
  return (
    <div className="sitting-buttons sitting-noprint">
      {isReady ? (
        <button ref={start} type="button" className="button primary" onClick={() => session.start(Date.now())}>
          Start: the clock runs
        </button>
      ) : (
        <button type="button" className="button primary" onClick={() => session.readInstructions()}>
          I have read it
        </button>
      )}
      <button type="button" className="button" onClick={() => print()}>
        Print this page
      </button>
      <button type="button" className="button" onClick={onLeave}>
        Another sheet
      </button>
    </div>
  );
}

interface BeforeStartProps {
  readonly session: SittingSession;
  readonly onLeave: () => void;
}

/** All that is to be read before the clock runs: what is asked, by which rules, and how it is marked. */
export function BeforeStart({ session, onLeave }: BeforeStartProps) {
  const { sheet } = session;
  return (
    <div className="sitting-page">
      <header>
        <p className="sitting-title">{sheet.title}</p>
        <p>{sheet.purpose}</p>
      </header>
      <Sentences title="Instructions" lines={sheet.instructions ?? []} />
      <Sentences title="Cautions" lines={sheet.cautions ?? []} />
      <Sentences title="Rules" lines={ruleSentences(sheet)} />
      <section aria-label="Stations">
        <h2>Stations</h2>
        <TextTable heads={["Station", "Lock", "Help", "Tries", "Time"]} rows={sheet.stations.map(stationRow)} />
      </section>
      <Scheme sheet={sheet} />
      <p className="sitting-notice">{NOTICE}</p>
      <StartButtons session={session} onLeave={onLeave} />
    </div>
  );
}
