import { sheetId } from "../../../drill/sheet/sheetId";
import { type Receipt, receiptSchema } from "../../../school/signing/receipt";
import { Button } from "../../parts/controls/Button";
import { saveFile } from "../../parts/files/saveFile";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { KeptRecord } from "../../verdicts/keptRecord";

interface SignedProps {
  readonly kept: KeptRecord;
  readonly receipt: Receipt;
}

/** Name of a person as a part of a file's name: letters and digits of any language. */
const fileWord = (name: string): string =>
  name
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");

/** The record with the school's signature, as a file; what the signature proves, and what it does not. */
export function SignedRecord({ kept: { record, sha256 }, receipt }: SignedProps) {
  const { told, say } = useDoing();
  const { statement } = receipt;
  const save = () => {
    const name = `${sheetId(record.sheet)}-${fileWord(statement.person.name)}-${record.startedAt.slice(0, 10)}-signed.json`;
    const text = `${JSON.stringify({ sha256, record, receipt: receiptSchema.parse(receipt) }, null, 2)}\n`;
    saveFile({ name, type: "application/json", text });
    say(`${name} is saved. Anyone can check it on the page “Sittings” of this app, without the server.`);
  };
  return (
    <section className="stack print:hidden" aria-labelledby="signed-record">
      <h2 id="signed-record">Signed record</h2>
      <p>
        {shownName(statement.proves)} {shownName(statement.provesNot)}
      </p>
      <p className="text-small text-soft">
        Whoever checks the file compares its key with the school’s: <b className="wrap-anywhere">{statement.key}</b>
      </p>
      <div className="row">
        <Button className="primary" onClick={save}>
          Save the signed record
        </Button>
        <a href="#/sittings">Check a record</a>
        <a href="#/instructor/keys">Print the school’s key</a>
      </div>
      <ToldLine told={told} />
    </section>
  );
}
