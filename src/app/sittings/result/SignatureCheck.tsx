import { useState } from "react";
import { harmlessName } from "../../../lock/harmlessText";
import { recordHash } from "../../../records/hashedRecord";
import { checkReceipt, type ReceiptCheck, receiptSentences } from "../../../school/signing/checkReceipt";
import { typedFingerprint } from "../../../school/signing/fingerprint";
import { Lines } from "../../parts/Lines";
import { NamedValues } from "../../parts/NamedValues";
import { Notice } from "../../parts/Notice";

interface SignedFile {
  readonly receipt: unknown;
  readonly record: object;
}

/** What the server of the school stated, by name. */
function Stated({ statement, fingerprint }: Pick<ReceiptCheck, "statement" | "fingerprint">) {
  if (statement === null) return null;
  const rows: [string, string | null][] = [
    ["school", harmlessName(statement.school.name)],
    ["person", harmlessName(statement.person.name)],
    ["received", new Date(statement.receivedAt).toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" })],
    ["place", `number ${statement.chain.place} of all that the school received`],
    ["key", fingerprint],
  ];
  return (
    <>
      <NamedValues rows={rows} label="What the server states" />
      <p className="max-w-[68ch] mt-3 text-soft text-small">
        {harmlessName(statement.proves)} {harmlessName(statement.provesNot)}
      </p>
    </>
  );
}

/** What came of it: whether it holds, and whose it is. */
function Holds({ check, isTyped }: { readonly check: ReceiptCheck; readonly isTyped: boolean }) {
  if (check.problems.length > 0) {
    return (
      <div role="alert" className="notice mt-4">
        <p>The signature does not hold.</p>
        <Lines of={receiptSentences(check.problems)} />
      </div>
    );
  }
  return (
    <div role="status" className="notice mt-4 border-line">
      <p>{isTyped ? "The signature holds: it is that of the key you entered." : "The signature fits the record."}</p>
      <Lines of={receiptSentences(check.unchecked)} />
    </div>
  );
}

/** The signature that a class server put on a record, checked here, without the server. @param props.file - whose record was read */
export function SignatureCheck({ file }: { readonly file: unknown }) {
  const [typed, setTyped] = useState("");
  const { receipt, record } = file as SignedFile;
  const key = typedFingerprint(typed);
  const isTyped = key !== null;
  const check = checkReceipt(receipt, recordHash(record), isTyped ? [key] : null);
  return (
    <section aria-label="Signature" className="max-w-[856px] mt-6">
      <h2 className="mb-3">Signature of the school</h2>
      <label className="row">
        Fingerprint of the school’s key, as printed
        <input
          className="field flex-1 min-w-[260px]"
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      {typed.trim() !== "" && !isTyped && (
        <Notice>This is no fingerprint yet: it has 25 letters and digits, in five groups.</Notice>
      )}
      <Stated statement={check.statement} fingerprint={check.fingerprint} />
      <Holds check={check} isTyped={isTyped} />
    </section>
  );
}
