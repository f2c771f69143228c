import { useState } from "react";
import type { PersonRecord } from "../../../records/records";
import { mergePeople } from "../../../store/moveRecords";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { Dialog } from "../../parts/controls/Dialog";
import { ToldLine, useDoing } from "../../parts/Told";

interface MergeSheetProps {
  readonly current: CurrentLogbook;
  readonly people: readonly PersonRecord[];
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

/** Makes one person of two: everything of the chosen person goes to another one. It can be undone. */
export function MergeSheet({ current, people, isOpen, onClose }: MergeSheetProps) {
  const { person, logbook } = current;
  const [into, setInto] = useState("");
  const { told, act } = useDoing();
  if (person === null) return null;
  const others = people.filter(({ id, isDemo }) => id !== person.id && isDemo === person.isDemo);
  const other = others.find(({ id }) => id === into) ?? others[0];
  const merge = async () => {
    if (other === undefined) return "There is no other person to merge with.";
    const undo = await mergePeople(logbook, person.id, other.id);
    current.choose(other);
    current.offerUndo(`${person.name}’s records are now ${other.name}’s, and ${person.name} is gone.`, undo);
    onClose();
    return "";
  };
  return (
    <Dialog title={`Merge ${person.name} with another person`} isOpen={isOpen} onClose={onClose}>
      <p>
        Every record of {person.name} goes to the person you choose here, and the name {person.name} goes from the list.
        A sitting still shows the name it was taken under. You can undo this until you close or reload the page.
      </p>
      {other === undefined ? (
        <p>There is no other person to merge with.</p>
      ) : (
        <div className="row mt-4">
          <select
            className="field"
            aria-label="Merge into"
            value={other.id}
            onChange={(event) => setInto(event.currentTarget.value)}
          >
            {others.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
          <button type="button" className="button primary" onClick={() => act(merge)}>
            Give all of {person.name}’s records to {other.name}
          </button>
        </div>
      )}
      <ToldLine told={told} />
    </Dialog>
  );
}
