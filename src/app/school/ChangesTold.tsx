import { useEffect, useState } from "react";
import { harmlessText } from "../../lock/harmlessText";
import { KIND_WORDS, shortId } from "../../school/records/kindWords";
import type { Logbook } from "../../store/logbook";
import type { OutboxRow } from "../../store/marks/outboxMarks";
import { toldChanges, understood } from "../../store/outbox/changes";
import { Button } from "../parts/controls/Button";
import { useTold } from "./useTold";

/** What the class made of a change, in sentences. */
function sentenceOf({ id, kind, overruled }: OutboxRow): string {
  const which = `${KIND_WORDS[kind as keyof typeof KIND_WORDS]} ${shortId(id)}`;
  if (overruled === undefined) {
    return `${which} belongs to a sitting. The class keeps it, since a result is not yours to delete. Only the copy on this bench is gone.`;
  }
  const { tags, note } = overruled;
  const own = [note === "" ? "no note" : `“${note}”`, ...(tags.length === 0 ? [] : [`tags ${tags.join(", ")}`])];
  return `${which} was changed later at another bench. That change holds, and is shown here now. Yours was: ${own.join(", ")}.`;
}

interface ToldProps {
  readonly logbook: Logbook;
  /** Asked anew with each of it. */
  readonly version: number;
}

/** What the class made otherwise of notes and deletions than was asked here. */
export function ChangesTold({ logbook, version }: ToldProps) {
  const [rows, setRows] = useState<readonly OutboxRow[]>([]);
  const { line, act } = useTold();
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew after every sending
  useEffect(() => {
    toldChanges(logbook).then(setRows, () => undefined);
  }, [logbook, version]);
  const read = async () => {
    await understood(logbook);
    setRows([]);
    return "";
  };
  if (rows.length === 0) return line;
  return (
    <section>
      <h3 className="mt-6">What the class did differently</h3>
      <p>If tags or a note are changed at two benches, the later change holds. The class keeps both.</p>
      <ul>
        {rows.map((row) => (
          <li key={row.id} className="wrap-anywhere">
            {harmlessText(sentenceOf(row))}
          </li>
        ))}
      </ul>
      <div className="row mt-4">
        <Button onClick={() => act(read)}>I have read this</Button>
      </div>
      {line}
    </section>
  );
}
