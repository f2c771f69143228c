import { type FormEvent, useState } from "react";
import type { Combination } from "../../../../lock/combination";
import { OwnNumbers } from "../../../hand/OwnNumbers";
import { faceNumbers, readOwn } from "../../../hand/readOwn";
import { Button } from "../../../parts/controls/Button";
import { Dialog } from "../../../parts/controls/Dialog";
import type { ChangeSetup } from "./changeSession";

interface NewCombinationSheetProps {
  readonly setup: ChangeSetup;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onDraw: () => void;
  readonly onOwn: (numbers: Combination) => void;
}

function NewCombinationForm({ setup, onClose, onDraw, onOwn }: Omit<NewCombinationSheetProps, "isOpen">) {
  const [typed, setTyped] = useState<readonly (number | undefined)[]>(() => faceNumbers(setup.wanted, setup.profile));
  const own = readOwn(setup.profile, typed);
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (!("numbers" in own)) return;
    onOwn(own.numbers);
    onClose();
  };
  const draw = () => {
    onDraw();
    onClose();
  };
  return (
    <form onSubmit={take}>
      <p>The combination the lock is to be given.</p>
      <OwnNumbers profile={setup.profile} typed={typed} onTyped={setTyped} />
      <div className="row mt-4">
        <Button type="submit" className="primary" disabled={!("numbers" in own)}>
          Take these
        </Button>
        <Button onClick={draw}>Draw one by the rules</Button>
      </div>
      <p className="text-soft">This is a practice lock. Never type a combination that is in use anywhere.</p>
    </form>
  );
}

/** Chooses the new combination. The rules it breaks are told, with their source, but do not stop it. */
export function NewCombinationSheet(props: NewCombinationSheetProps) {
  return (
    <Dialog title="New combination" isOpen={props.isOpen} onClose={props.onClose}>
      <NewCombinationForm {...props} />
    </Dialog>
  );
}
