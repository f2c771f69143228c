import { useState } from "react";
import { mergedReceipt } from "../../../school/wire/rosterWire";
import { countText } from "../../../wording/amountWords";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";

interface Named {
  readonly id: string;
  readonly name: string;
}

interface MergeProps {
  readonly asking: Asking;
  readonly person: Named;
  readonly others: readonly Named[];
  /** @param says - what came of it */
  readonly onMerged: (says: string) => void;
}

const SHORT = 4;

/** A name; those that two people have are told apart by their ids. */
const labelOf = ({ id, name }: Named, all: readonly Named[]) =>
  all.filter((one) => one.name === name).length > 1 ? `${shownName(name)} (${id.slice(0, SHORT)})` : shownName(name);

/** Makes one person of two entries: asked once more before it is done. */
export function MergePerson({ asking, person, others, onMerged }: MergeProps) {
  const [chosen, setChosen] = useState("");
  const [isAsked, setIsAsked] = useState(false);
  const { told, act } = useDoing();
  const into = others.find(({ id }) => id === chosen);
  const name = shownName(person.name);
  const merge = (stays: Named) =>
    act(async () => {
      const { records } = await asking.change(`/people/${person.id}/merge`, mergedReceipt, { into: stays.id });
      const says = `${name} is now ${labelOf(stays, others)}, with ${countText(records, "record")} more.`;
      onMerged(says);
      return says;
    });
  return (
    <>
      <label className="row">
        {name} is the same person as
        <Select
          value={chosen}
          choices={[["", "choose a name"], ...others.map((one) => [one.id, labelOf(one, others)] as const)]}
          onChoice={(id) => {
            setChosen(id);
            setIsAsked(false);
          }}
        />
      </label>
      {!isAsked && (
        <div className="row">
          <Button disabled={into === undefined} onClick={() => setIsAsked(true)}>
            Make one person of them
          </Button>
        </div>
      )}
      {isAsked && into !== undefined && (
        <>
          <p role="status">
            Everything of {name} is then shown under {labelOf(into, others)}. The records stay as they were sent. The
            name, PIN and join card of {labelOf(into, others)} hold; those of {name} go. Benches where {name} joined go
            on. You cannot undo this.
          </p>
          <div className="row">
            <Button className="primary" onClick={() => merge(into)}>
              Yes, they are one person
            </Button>
            <Button onClick={() => setIsAsked(false)}>Cancel</Button>
          </div>
        </>
      )}
      <ToldLine told={told} />
    </>
  );
}
