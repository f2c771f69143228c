import { type ReactNode, useEffect, useMemo, useRef } from "react";
import type { Motion } from "../../dialing/motion";
import type { AnswerGiven } from "../../drill/questions/questionDifficulty";
import { sheetFingerprint } from "../../drill/sheet/sheetFingerprint";
import { stationName } from "../../drill/sheet/stationName";
import type { SittingBreak } from "../../drill/sitting/sittingMemory";
import { harmlessName } from "../../lock/harmlessText";
import { checkSentences } from "../../records/sitting/checkWords";
import { type ClockJump, markedAgain, NOTICE, type SittingRecord } from "../../records/sitting/sittingRecord";
import { Button } from "../parts/controls/Button";
import { NotSound } from "../parts/files/RecordChecker";
import { messageOf } from "../parts/page/messageOf";
import { StackedTable } from "../parts/TextTable";
import { checkKept } from "./checkKept";
import type { KeptRecord } from "./keptRecord";
import { QuestionReview } from "./QuestionReview";
import { SaveRecord } from "./SaveRecord";
import { StartedAt } from "./StartedAt";
import { clockText, END_SENTENCES, resultAdvice, VERDICT_WORDS, verdictHeadline } from "./sittingWords";
import { TriesReview } from "./TriesReview";

/** Why a record does not check, in sentences; none where it does. */
function problemsOf(kept: KeptRecord, motions: readonly (Motion | null)[]): readonly string[] {
  try {
    return checkSentences(checkKept(kept, motions).check.problems);
  } catch (error) {
    return [`${messageOf(error)}.`];
  }
}

interface VerdictProps {
  readonly record: SittingRecord;
  /** Whether the record checks: one that does not has no result. */
  readonly isSound: boolean;
}

function Verdict({ record, isSound }: VerdictProps) {
  const { marking, ended } = record;
  const headline = useRef<HTMLParagraphElement>(null);
  // The dial or the question that had the focus is gone.
  useEffect(() => headline.current?.focus(), []);
  return (
    <section aria-label="Verdict">
      <p ref={headline} tabIndex={-1} className="text-title focus:outline-none" role="status">
        {isSound ? verdictHeadline(record) : "No result."}
      </p>
      <p>{END_SENTENCES[ended]}</p>
      <ul className="grid gap-2">
        {marking.reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
        {resultAdvice(record).map((line) => (
          <li key={line} className="text-soft">
            {line}
          </li>
        ))}
      </ul>
      <p className="mt-4 font-semibold">{NOTICE}</p>
    </section>
  );
}

function Marks({ record }: { readonly record: SittingRecord }) {
  const rows = record.marking.marks.map(({ criterion, verdict, says, sureness }) => [
    criterion.place,
    criterion.asks,
    says,
    VERDICT_WORDS[verdict],
    sureness === "" ? "counted" : sureness,
  ]);
  if (rows.length === 0) return null;
  const methods = record.marking.marks.flatMap(({ criterion, method }) =>
    method === undefined ? [] : [`${criterion.place}: ${method}.`],
  );
  return (
    <section aria-label="Marks">
      <h2 className="mb-3">Marks</h2>
      <StackedTable head={["Where", "Asked", "Result", "Verdict", "How sure"]} rows={rows} />
      {methods.length > 0 && (
        <details className="text-small text-soft">
          <summary className="py-1 phone:py-3">How sure: the methods</summary>
          <ul>
            {methods.map((method, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows keep their place
              <li key={k}>{method}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** How often, and for how long where the record says so. */
function breakText(count: number, kind: SittingBreak["kind"], breaks: SittingRecord["breaks"] = []): string {
  const lengths = breaks.filter((one) => one.kind === kind).map(({ length_ms }) => length_ms);
  const length = lengths.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  const unknown = lengths.filter((one) => one === null).length;
  return [
    String(count),
    ...(length === 0 ? [] : [`${clockText(length)} in all`]),
    ...(unknown === 0 ? [] : [`the length of ${unknown} is not recorded`]),
  ].join(", ");
}

/** How far the machine's clock jumped, to the second, and when: it was set, or the machine slept. */
const jumpText = ({ at_ms, by_ms }: ClockJump) =>
  `${by_ms < 0 ? "back" : "forward"} ${clockText(1000 * Math.round(Math.abs(by_ms) / 1000))} at ${clockText(at_ms)}`;

const jumpsText = (jumps: SittingRecord["clockJumps"] = []) =>
  jumps.length === 0 ? "none" : `${jumps.map(jumpText).join("; ")} (the clock was set, or the machine slept)`;

const SEEDS = {
  drawn: "drawn for this sitting",
  sheet: "set by the sheet",
  address: "given in the address: practice, not a test",
  server: "drawn by the class server when the sitting began",
} as const;

/** What the record can be checked by. */
function Provenance({ kept }: { readonly kept: KeptRecord }) {
  const { record, sha256 } = kept;
  const rows: readonly (readonly [string, ReactNode])[] = [
    ["person", record.person === undefined ? "nobody is named" : harmlessName(record.person)],
    ["sheet", `${sheetFingerprint(record.sheet)} (fingerprint of what counts in it)`],
    ["started", <StartedAt key="started" moment={record.startedAt} />],
    ["worked", clockText(record.worked_ms)],
    ...(record.extraTime_percent === undefined
      ? []
      : [["extra time", `${record.extraTime_percent} %: the time limits above include it`] as const]),
    ["pauses", breakText(record.pauses, "pause", record.breaks)],
    ["reloads", breakText(record.interruptions, "reload", record.breaks)],
    ["clock jumps", record.clockJumps === undefined ? "not recorded" : jumpsText(record.clockJumps)],
    ["seed", record.seedFrom === undefined ? `${record.seed}` : `${record.seed}, ${SEEDS[record.seedFrom]}`],
    ["version", record.appVersion],
    ...record.sheet.stations.map(
      (station, k) => [`lock of ${stationName(station, k)}`, `SHA-256 ${record.profileHashes[k]}`] as const,
    ),
    ["this record", `SHA-256 ${sha256}`],
  ];
  return (
    <section aria-label="Record" className="sitting-record">
      <h2 className="mb-3">
        Record <small className="print:hidden">save it to have it checked again</small>
      </h2>
      <dl className="pairs">
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
  /** Answers given in this browser; null where they say nothing of whoever is shown. */
  readonly given: readonly AnswerGiven[] | null;
  /** Whether its plain file is offered: where it is signed, that file is. */
  readonly hasFile?: boolean;
  /** What else can be done with it. */
  readonly children?: ReactNode;
}

/** What a sitting came to, from its record alone: its marks are made again from its tries and answers. */
export function RecordResult({ kept, motions, given, hasFile = true, children }: RecordResultProps) {
  const problems = useMemo(() => problemsOf(kept, motions), [kept, motions]);
  // Marks are made again, and never read off the record.
  const record = useMemo(() => ({ ...kept.record, marking: markedAgain(kept.record) }), [kept]);
  return (
    <>
      {/* Stands above the verdict, on screen and on paper. */}
      <NotSound problems={problems} />
      <Verdict record={record} isSound={problems.length === 0} />
      <div className="row print:hidden">
        {hasFile && <SaveRecord kept={kept} />}
        <Button onClick={() => print()}>Print the result</Button>
        {children}
      </div>
      <Marks record={record} />
      <TriesReview record={record} motions={motions} />
      <QuestionReview answers={record.answers} given={given} />
      <Provenance kept={kept} />
    </>
  );
}
