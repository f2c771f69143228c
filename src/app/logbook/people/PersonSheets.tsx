import { type FormEvent, useState } from "react";
import { harmlessName } from "../../../lock/harmlessText";
import type { PersonRecord } from "../../../records/records";
import { deletePerson, recordsOfKind, wholeLogbook } from "../../../store/wholeLogbook";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { nameProblem, newPerson } from "../../keeping/people";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { saveFile } from "../../parts/files/saveFile";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";
import { newId } from "../../parts/page/newId";
import { exportFile } from "../files/exportFiles";

interface NameFormProps {
  readonly name: string;
  readonly others: readonly PersonRecord[];
  readonly onName: (name: string) => void;
}

function NameForm({ name, others, onName }: NameFormProps) {
  const [text, setText] = useState(name);
  const [problem, setProblem] = useState<string | null>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = nameProblem(text, others);
    setProblem(found);
    if (found === null) onName(text.trim());
  };
  return (
    <form onSubmit={submit}>
      <label>
        Name <small>on this device only, no account</small>
        <input
          className="field block w-full mt-2"
          value={text}
          autoComplete="off"
          aria-invalid={problem !== null}
          onChange={(event) => setText(event.currentTarget.value)}
        />
      </label>
      {problem !== null && <Notice>{problem}</Notice>}
      <div className="row mt-4">
        <button type="submit" className="button primary">
          Save the name
        </button>
      </div>
    </form>
  );
}

/** What every dialog about a person is given. */
export interface PersonSheetProps {
  readonly current: CurrentLogbook;
  readonly people: readonly PersonRecord[];
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

/** Adds a person, who then practices. */
export function AddSheet({ current, people, isOpen, onClose }: PersonSheetProps) {
  const add = async (name: string) => {
    const person = newPerson(name, newId(), Date.now());
    await current.logbook.save({ kind: "people", record: person });
    current.choose(person);
    onClose();
  };
  return (
    <Dialog title="Add a person" isOpen={isOpen} onClose={onClose}>
      <NameForm name="" others={people} onName={add} />
    </Dialog>
  );
}

/** Gives a person another name. */
export function RenameSheet({ current, people, isOpen, onClose }: PersonSheetProps) {
  const { person } = current;
  if (person === null) return null;
  const rename = async (name: string) => {
    const renamed = { ...person, name, updatedAt: Date.now() };
    await current.logbook.save({ kind: "people", record: renamed });
    current.choose(renamed);
    onClose();
  };
  return (
    <Dialog title={`Rename ${harmlessName(person.name)}`} isOpen={isOpen} onClose={onClose}>
      <NameForm name={person.name} others={people.filter(({ id }) => id !== person.id)} onName={rename} />
    </Dialog>
  );
}

/** Makes ready to forget, by their ids, what the page has of sittings beside the logbook. */
export type SittingsForgotten = () => Promise<(ids: ReadonlySet<string>) => void>;

interface DeleteSheetProps extends PersonSheetProps {
  readonly sittingsForgotten: SittingsForgotten;
}

/** Deletes a person with all records, after an export was offered. */
export function DeleteSheet({ current, isOpen, onClose, sittingsForgotten }: DeleteSheetProps) {
  const { person, logbook } = current;
  const [said, setSaid] = useState("");
  if (person === null) return null;
  const act = (doing: () => Promise<void>) => doing().catch((error) => setSaid(messageOf(error)));
  const save = async () => {
    const file = exportFile("logbook", await wholeLogbook(logbook), { personId: person.id, now: Date.now() });
    saveFile(file);
    setSaid(file.told);
  };
  const remove = async () => {
    const sittings = (await recordsOfKind(logbook, "sittings")).filter(({ personId }) => personId === person.id);
    const forgetSittings = await sittingsForgotten();
    await deletePerson(logbook, person.id, true);
    forgetSittings(new Set(sittings.map(({ id }) => id)));
    await current.settle();
    onClose();
  };
  return (
    <Dialog title={`Delete ${harmlessName(person.name)}`} isOpen={isOpen} onClose={onClose}>
      <p>
        All attempts, traces, zeroings, jobs, sittings and settings of {person.name} go from this device, and cannot be
        brought back. Save them as a file first, if anyone may want them.
      </p>
      <div className="row mt-4">
        <Button onClick={() => act(save)}>Save {person.name}’s records</Button>
        <Button className="primary" onClick={() => act(remove)}>
          Delete {person.name} and all records
        </Button>
      </div>
      <p role="status">{said}</p>
    </Dialog>
  );
}
