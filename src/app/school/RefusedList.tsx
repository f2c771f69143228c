import { useEffect, useState } from "react";
import { KIND_WORDS, shortId } from "../../school/records/kindWords";
import type { Logbook } from "../../store/logbook";
import { type Refused, refusedRecords } from "../../store/outbox/outbox";
import { Button } from "../parts/controls/Button";
import { saveFile } from "../parts/files/saveFile";
import { problemWords } from "./askServer";

const reasonOf = ({ mark }: Refused): string =>
  mark.problem === undefined ? "no reason was given" : problemWords(mark.problem);

/** What was refused, whole and with the reasons, for whoever runs the server. */
const textOf = (refused: readonly Refused[]): string =>
  JSON.stringify(
    refused.map((one) => ({ reason: reasonOf(one), ...one.sent })),
    null,
    1,
  );

/** What the server refused and why, and a way to save it. @param count - asked anew with it */
export function RefusedList({ logbook, count }: { readonly logbook: Logbook; readonly count: number }) {
  const [refused, setRefused] = useState<readonly Refused[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when there are more, or fewer
  useEffect(() => {
    refusedRecords(logbook).then(setRefused, () => undefined);
  }, [logbook, count]);
  const save = () => saveFile({ name: "gatefall-refused.json", type: "application/json", text: textOf(refused) });
  return (
    <section>
      <h3 className="mt-6">Refused by the server</h3>
      <p>
        These records stay on this bench and in its logbook. Save them with the reasons for whoever runs the server, or
        press Send now to try again.
      </p>
      <ul>
        {refused.map((one) => (
          <li key={one.mark.id}>
            {KIND_WORDS[one.sent.kind]} {shortId(one.mark.id)}: {reasonOf(one)}.
          </li>
        ))}
      </ul>
      <div className="row mt-4">
        <Button onClick={save}>Save the refused records as a file</Button>
      </div>
    </section>
  );
}
