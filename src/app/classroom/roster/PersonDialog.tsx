import { useState } from "react";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { NumberField } from "../../parts/controls/NumberField";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";
import { shownName } from "../../parts/shownName";
import type { Asking } from "../asking/asking";
import type { RosterPerson } from "./RosterTable";

/** Most extra time, percent: four times as long. */
const MOST_EXTRA = 300;

interface PersonProps {
  readonly asking: Asking;
  readonly classId: string;
  readonly title: string;
  /** Null while nobody is chosen. */
  readonly person: RosterPerson | null;
  readonly onChanged: () => void;
  readonly onClose: () => void;
  /** Says what was done, on the page below. */
  readonly says: (text: string) => void;
}

const isExtra = (extra: number | undefined): extra is number =>
  extra !== undefined && Number.isInteger(extra) && extra >= 0 && extra <= MOST_EXTRA;

function PersonFields({
  asking,
  classId,
  person,
  onChanged,
  onClose,
  says,
}: PersonProps & { readonly person: RosterPerson }) {
  const [name, setName] = useState(person.name);
  const [extra, setExtra] = useState<number | undefined>(person.extraTime);
  const [problem, setProblem] = useState<string | null>(null);
  const change = async (path: string, value: unknown, done: string) => {
    setProblem(null);
    try {
      await asking.act(path, value);
      onClose();
      says(done);
    } catch (error) {
      setProblem(messageOf(error));
    }
    // What somebody else changed meanwhile is shown too.
    onChanged();
  };
  const own = `/people/${person.id}`;
  const { version } = person;
  const save = () =>
    change(
      own,
      {
        version,
        ...(name.trim() !== person.name && { name: name.trim() }),
        ...(extra !== person.extraTime && { extraTime: extra }),
        ...(person.isByCode && { isKnown: true }),
      },
      `${name.trim()} is changed.`,
    );
  const isWhole = isExtra(extra);
  return (
    <form
      className="grid gap-4"
      onSubmit={(event) => {
        event.preventDefault();
        if (isWhole && name.trim() !== "") save();
      }}
    >
      <label className="block">
        Name
        <input
          className="field block w-full mt-2"
          value={name}
          required
          maxLength={100}
          autoComplete="off"
          onChange={({ currentTarget }) => setName(currentTarget.value)}
        />
      </label>
      <NumberField
        label="Extra time in sittings"
        value={extra}
        onNumber={setExtra}
        size={4}
        says={isWhole ? undefined : `Enter a whole number of percent from 0 to ${MOST_EXTRA}.`}
      >
        % of the sheet’s time
      </NumberField>
      {problem !== null && <Notice className="">{problem}</Notice>}
      <div className="row">
        <button type="submit" className="button primary">
          {person.isByCode ? "Save: this person belongs here" : "Save"}
        </button>
        {person.hasPin && (
          <Button
            onClick={() =>
              change(own, { version, noPin: true }, `${shownName(person.name)} sets a new PIN when joining next.`)
            }
          >
            Remove the PIN
          </Button>
        )}
        {person.hasCard && (
          <Button
            onClick={() =>
              change(
                `/classes/${classId}/people/${person.id}/card/revoke`,
                undefined,
                `${shownName(person.name)}’s card is not good any more.`,
              )
            }
          >
            Cancel the card
          </Button>
        )}
        <Button
          onClick={() =>
            change(
              `/classes/${classId}/people/${person.id}/leave`,
              undefined,
              `${shownName(person.name)} left the class. The records stay.`,
            )
          }
        >
          Remove from the class
        </Button>
      </div>
      <p className="text-small text-soft">
        Someone who is removed keeps all records. Add the same name again, and the person is back.
      </p>
    </form>
  );
}

/** A person's name, extra time, PIN and card. */
export function PersonDialog(props: PersonProps) {
  const { person, title, onClose } = props;
  return (
    <Dialog title={title} isOpen={person !== null} onClose={onClose}>
      {person !== null && <PersonFields {...props} person={person} />}
    </Dialog>
  );
}
