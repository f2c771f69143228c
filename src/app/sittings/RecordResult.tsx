import { type ReactNode, useEffect, useRef } from "react";
import type { AnswerGiven } from "../../drill/questions/questionDifficulty";
import { NOTICE, type SittingRecord } from "../../drill/sittingRecord";
import type { Motion } from "../../logbook/traceCodec";
import { QuestionReview } from "./QuestionReview";
import { SaveRecord } from "./SaveRecord";
import { StartedAt } from "./StartedAt";
import type { KeptRecord } from "./sittingShelf";
import { clockText, endSentence, resultAdvice, stationTitle, verdictHeadline, verdictWord } from "./sittingWords";
import { TextTable } from "./TextTable";
import { TriesReview } from "./TriesReview";

function Verdict({ record }: { readonly record: SittingRecord }) {
  const { marking, ended } = record;
  const headline = useRef<HTMLParagraphElement>(null);
  // The dial or the question that had the focus is gone.
  useEffect(() => headline.current?.focus(), []);
  return (
    <section aria-label="Verdict">
      <p ref={headline} tabIndex={-1} className="sitting-verdict" role="status">
        {verdictHeadline(record)}
      </p>
      <p>{endSentence(ended)}</p>
      <ul className="sitting-lines">
        {marking.reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
        {resultAdvice(record).map((line) => (
          <li key={line} className="sitting-soft">
            {line}
          </li>
        ))}
      </ul>
      <p className="sitting-notice">{NOTICE}</p>
    </section>
  );
}

function Marks({ record }: { readonly record: SittingRecord }) {
  const rows = record.marking.marks.map(({ criterion, verdict, says, sureness }) => [
    criterion.place,
    criterion.asks,
    says,
    verdictWord(verdict),
    sureness === "" ? "counted" : sureness,
  ]);
  if (rows.length === 0) return null;
  return (
    <section aria-label="Marks">
      <h2>Marks</h2>
      <TextTable heads={["Where", "Asked", "Came to", "Verdict", "How sure"]} rows={rows} />
    </section>
  );
}

/** What the record can be checked by. */
function Provenance({ kept }: { readonly kept: KeptRecord }) {
  const { record, sha256 } = kept;
  const rows: readonly (readonly [string, ReactNode])[] = [
    ...(record.person === undefined ? [] : [["person", record.person] as const]),
    ["started", <StartedAt key="started" moment={record.startedAt} />],
    ["worked", clockText(record.worked_ms)],
    ["pauses", String(record.pauses)],
    ["reloads", String(record.interruptions)],
    ["seed", String(record.seed)],
    ["version", record.appVersion],
    ...record.sheet.stations.map(
      (station, k) => [`lock of ${stationTitle(station)}`, `SHA-256 ${record.profileHashes[k]}`] as const,
    ),
    ["this record", `SHA-256 ${sha256}`],
  ];
  return (
    <section aria-label="Record" className="sitting-record">
      <h2>
        Record <small className="sitting-noprint">save it to have it checked again</small>
      </h2>
      <dl>
        {rows.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

interface RecordResultProps {
  readonly kept: KeptRecord;
  /** Of each try; null where none is kept. */
  readonly motions: readonly (Motion | null)[];
  /** Answers given in this browser. */
  readonly given: readonly AnswerGiven[];
  /** What else can be done with it. */
  readonly children: ReactNode;
}

/** What a sitting came to, from its record alone. */
export function RecordResult({ kept, motions, given, children }: RecordResultProps) {
  const { record } = kept;
  return (
    <>
      <Verdict record={record} />
      <div className="sitting-buttons sitting-noprint">
        <SaveRecord kept={kept} />
        <button type="button" className="button" onClick={() => print()}>
          Print the result
        </button>
        {children}
      </div>
      <Marks record={record} />
      <TriesReview record={record} motions={motions} />
      <QuestionReview answers={record.answers} given={given} />
      <Provenance kept={kept} />
    </>
  );
}
