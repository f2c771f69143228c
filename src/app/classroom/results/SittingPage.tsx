import * as z from "zod/mini";
import type { Motion } from "../../../dialing/motion";
import { motionOfText } from "../../../records/motion/traceCodec";
import { readSittingRecord } from "../../../records/sitting/readSittingRecord";
import { findingSentences } from "../../../school/assignments/sittingFindings";
import { receiptSchema } from "../../../school/signing/receipt";
import { sittingMotions, sittingState } from "../../../school/wire/assignmentsWire";
import { countText } from "../../../wording/amountWords";
import type { Problem } from "../../../wording/problem";
import { useAsked } from "../../keeping/useLogbook";
import { Lines } from "../../parts/Lines";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { RecordResult } from "../../verdicts/RecordResult";
import type { Asking } from "../asking/asking";
import { outcomeText } from "./resultWords";
import { SignedRecord } from "./SignedRecord";
import { SittingComments } from "./SittingComments";

const signedFile = z.object({ sha256: z.string(), record: z.unknown(), receipt: receiptSchema });

const momentText = (moment: number) => `${dayText(moment)}, ${clockText(moment)}`;

/** A packed motion; null for one that this version cannot read. */
function motionIn(text: string | null | undefined): Motion | null {
  if (text === null || text === undefined) return null;
  try {
    return motionOfText(text);
  } catch {
    return null;
  }
}

/** The record of a sitting with its signature and the motions of its tries; null while it has not come in. */
async function recordOf(asking: Asking, sittingId: string, hasCome: boolean) {
  if (!hasCome) return null;
  const [file, { motions: sent }] = await Promise.all([
    asking.read(`/records/${sittingId}/signed`, signedFile),
    asking.read(`/sittings/${sittingId}/motions`, sittingMotions),
  ]);
  const { record, sha256 } = readSittingRecord(file);
  const kept: KeptRecord = { id: sittingId, record, sha256 };
  const motions = record.tries.map((_, index) =>
    motionIn(record.motions?.[index] ?? sent.find((one) => one.index === index)?.motion),
  );
  return { kept, motions, receipt: file.receipt };
}

interface FoundProps {
  readonly title: string;
  readonly found: readonly unknown[];
  readonly isWrong?: boolean;
}

function Found({ title, found, isWrong = false }: FoundProps) {
  if (found.length === 0) return null;
  return (
    <div className={isWrong ? "notice" : "notice border-line"}>
      <p>{title}</p>
      <Lines of={findingSentences(found as readonly Problem[])} />
    </div>
  );
}

interface PageProps {
  readonly asking: Asking;
  readonly sittingId: string;
  /** Who sat, where that is known. */
  readonly name: string | undefined;
}

/** One sitting as the server has it: its result, what was found of it, its signature, and comments. */
export function SittingPage({ asking, sittingId, name }: PageProps) {
  const { answer, problem } = useAsked(sittingId, async () => {
    const state = await asking.read(`/sittings/${encodeURIComponent(sittingId)}`, sittingState);
    return { state, come: await recordOf(asking, sittingId, state.receivedAt !== null) };
  });
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null) return null;
  const { state, come } = answer;
  return (
    <>
      <p>
        {name !== undefined && <b className="font-medium wrap-anywhere">{shownName(name)}. </b>}
        {come !== null && `${shownName(come.kept.record.sheet.title)}. `}
        Attempt {state.attempt}, begun {momentText(state.begunAt)}.{" "}
        {state.receivedAt === null
          ? `Its record has not come in. ${countText(state.tries, "try has", "tries have")} come so far.`
          : `Received ${momentText(state.receivedAt)}. By the server’s own marks: ${outcomeText(state)}.`}
      </p>
      <Found title="This does not agree, so the sitting has no result:" found={state.findings.problems} isWrong />
      <Found title="You should know:" found={state.findings.remarks} />
      {come !== null && <RecordResult kept={come.kept} motions={come.motions} given={null} hasFile={false} />}
      {come !== null && <SignedRecord kept={come.kept} receipt={come.receipt} />}
      <SittingComments asking={asking} sittingId={sittingId} />
    </>
  );
}
