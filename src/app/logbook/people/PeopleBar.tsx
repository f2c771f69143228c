import { useState } from "react";
import { harmlessName } from "../../../lock/harmlessText";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { MergeSheet } from "./MergeSheet";
import { AddSheet, DeleteSheet, RenameSheet, type SittingsForgotten } from "./PersonSheets";

interface PeopleBarProps {
  readonly current: CurrentLogbook;
  readonly sittingsForgotten: SittingsForgotten;
}

/** Who practices: everyone by name, switched by one tap. */
export function PeopleBar({ current, sittingsForgotten }: PeopleBarProps) {
  const { person, version } = current;
  const [sheet, setSheet] = useState<"add" | "rename" | "merge" | "delete" | null>(null);
  const { answer, problem } = useAsked(`people ${version}`, () => current.people());
  const people = answer ?? [];
  const sheetProps = { current, people, onClose: () => setSheet(null) };
  return (
    <div className="row justify-between gap-x-6">
      <fieldset className="row">
        <legend className="pb-2 text-small text-soft">Who practices</legend>
        {people.map((one) => (
          <Button key={one.id} aria-pressed={one.id === person?.id} onClick={() => current.choose(one)}>
            {harmlessName(one.name)} {one.isDemo === true && <small>invented</small>}
          </Button>
        ))}
        <Button className="border-dashed bg-transparent" aria-haspopup="dialog" onClick={() => setSheet("add")}>
          Add a person
        </Button>
      </fieldset>
      {person !== null && (
        <div className="flex gap-3 self-end">
          <Button aria-haspopup="dialog" onClick={() => setSheet("rename")}>
            Rename<span className="visually-hidden"> {person.name}</span>
          </Button>
          <Button aria-haspopup="dialog" onClick={() => setSheet("merge")}>
            Merge<span className="visually-hidden"> {person.name}</span>
          </Button>
          <Button aria-haspopup="dialog" onClick={() => setSheet("delete")}>
            Delete<span className="visually-hidden"> {person.name}</span>
          </Button>
        </div>
      )}
      {person?.isDemo === true && (
        <p className="basis-full text-small text-soft">
          {harmlessName(person.name)} is invented. What you dial is saved under your own name.
        </p>
      )}
      {problem !== null && (
        <p role="alert" className="basis-full text-small">
          {problem}
        </p>
      )}
      <AddSheet {...sheetProps} isOpen={sheet === "add"} />
      <RenameSheet {...sheetProps} isOpen={sheet === "rename"} />
      <MergeSheet {...sheetProps} isOpen={sheet === "merge"} />
      <DeleteSheet {...{ ...sheetProps, sittingsForgotten }} isOpen={sheet === "delete"} />
    </div>
  );
}
