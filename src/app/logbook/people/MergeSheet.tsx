import { useState } from "react";
import { mergePeople } from "../../../store/moveRecords";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { Select } from "../../parts/controls/Select";
import { ToldLine, useDoing } from "../../parts/Told";
import type { PersonSheetProps } from "./PersonSheets";

/** Makes one person of two: everything of the chosen person goes to another one. It can be undone. */
export function MergeSheet({ current, people, isOpen, onClose }: PersonSheetProps) {
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
          <Select
            aria-label="Merge into"
            value={other.id}
            choices={others.map(({ id, name }) => [id, name] as const)}
            onChoice={setInto}
          />
          <Button className="primary" onClick={() => act(merge)}>
            Give all of {person.name}’s records to {other.name}
          </Button>
        </div>
      )}
      <ToldLine told={told} />
    </Dialog>
  );
}
