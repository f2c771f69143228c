import { useState } from "react";
import { harmlessName } from "../../../lock/harmlessText";
import { ERASED_WORDS } from "../../../school/records/erasedWords";
import { erasedReceipt, STAYS_OF_ERASED } from "../../../school/wire/recordsWire";
import { countText } from "../../../wording/amountWords";
import { Button } from "../../parts/controls/Button";
import { Lines } from "../../parts/Lines";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";

interface EraseProps {
  readonly asking: Asking;
  readonly person: { readonly id: string; readonly name: string };
  /** @param says - what came of it */
  readonly onErased: (says: string) => void;
}

const WHAT_STAYS = STAYS_OF_ERASED.map((one) => ERASED_WORDS[one]);

/** Erases a person's data: what goes, what must stay, and the name typed, so that no slip of the hand does it. */
export function ErasePerson({ asking, person, onErased }: EraseProps) {
  const [typed, setTyped] = useState("");
  const { told, act } = useDoing();
  const name = shownName(person.name);
  const isNamed = typed.trim() === harmlessName(person.name);
  if (asking.signedIn.instructor.role !== "head") {
    return <p className="text-soft">Only the head of your school can erase someone. Ask the head.</p>;
  }
  const erase = () =>
    act(async () => {
      const { records } = await asking.change(`/people/${person.id}/erase`, erasedReceipt);
      const says = `${name} is erased, with ${countText(records, "record")}.`;
      onErased(says);
      return says;
    });
  return (
    <form
      className="stack gap-4"
      onSubmit={(event) => {
        event.preventDefault();
        if (isNamed) erase();
      }}
    >
      <p>
        This deletes every record of {name} on the server, with notes, sittings and results, and the name, the PIN and
        the join cards. You cannot undo this. If {name} wants the records, save the logbook file first.
      </p>
      <p>This must stay, or is not in the server’s hands:</p>
      <Lines of={WHAT_STAYS} className="text-small" />
      <label className="block">
        Type the name <b>{name}</b> to confirm
        <input
          className="field block w-full mt-2"
          value={typed}
          autoComplete="off"
          spellCheck={false}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
        />
      </label>
      <div className="row">
        <Button type="submit" disabled={!isNamed}>
          Erase {name}
        </Button>
      </div>
      <ToldLine told={told} />
    </form>
  );
}
