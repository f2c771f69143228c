import { useState } from "react";
import type { RecordOf } from "../../../records/records";
import { deleteRecord, giveRecord, type LooseKind } from "../../../store/moveRecords";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import { ToldLine, useDoing } from "../../parts/Told";

const WORDS: Readonly<Record<LooseKind, string>> = { attempts: "attempt", zeroings: "zeroing", jobs: "job" };

interface RecordActsProps {
  readonly current: CurrentLogbook;
  readonly kind: LooseKind;
  readonly record: Pick<RecordOf[LooseKind], "id" | "personId"> & { readonly sittingId?: string | undefined };
  /** It is not here any more: another person has it, or nobody. */
  readonly onGone: () => void;
}

/** One record given to another person, or deleted. Both can be undone. */
export function RecordActs({ current, kind, record, onGone }: RecordActsProps) {
  const { told, act } = useDoing();
  const [to, setTo] = useState("");
  const { answer: people } = useAsked(`people ${current.version}`, () => current.people());
  const word = WORDS[kind];
  if (record.sittingId !== undefined)
    return <p className="text-soft mt-3">This {word} is a try of a sitting and stays with it.</p>;
  const others = (people ?? []).filter(({ id, isDemo }) => id !== record.personId && isDemo !== true);
  const chosen = others.find(({ id }) => id === to);
  const give = async () => {
    if (chosen === undefined) return "Choose a person first.";
    const undo = await giveRecord(current.logbook, kind, record, chosen.id);
    current.offerUndo(`The ${word} is now ${chosen.name}’s.`, undo);
    onGone();
    return "";
  };
  const remove = async () => {
    current.offerUndo(`The ${word} is deleted.`, await deleteRecord(current.logbook, kind, record.id));
    onGone();
    return "";
  };
  return (
    <section className="mt-3" aria-label={`Give or delete this ${word}`}>
      <div className="row mt-4">
        {others.length > 0 && (
          <>
            <Select
              aria-label={`Who dialed this ${word}`}
              value={chosen?.id ?? ""}
              choices={[["", "Choose a person"], ...others.map(({ id, name }) => [id, name] as const)]}
              onChoice={setTo}
            />
            <Button disabled={chosen === undefined} onClick={() => act(give)}>
              Give this {word} to {chosen?.name ?? "another person"}
            </Button>
          </>
        )}
        <Button onClick={() => act(remove)}>Delete this {word}</Button>
      </div>
      <ToldLine told={told} />
    </section>
  );
}
