import { type FormEvent, useState } from "react";
import type { Combination } from "../../../lock/combination";
import { OwnNumbers } from "../../hand/OwnNumbers";
import { faceNumbers, readOwn } from "../../hand/readOwn";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import type { BenchSetup, CombinationSource } from "./benchSetup";

const SOURCES: readonly { readonly source: CombinationSource; readonly label: string }[] = [
  { source: "as-set", label: "As set: the combination this training lock comes with" },
  { source: "drawn", label: "Drawn at random, by the rules for this lock" },
  { source: "own", label: "My own" },
];

interface CombinationSheetProps {
  readonly setup: BenchSetup;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onTake: (source: "as-set" | "drawn") => void;
  readonly onOwn: (numbers: Combination) => void;
}

function CombinationForm({ setup, onClose, onTake, onOwn }: Omit<CombinationSheetProps, "isOpen">) {
  const { profile } = setup;
  const [source, setSource] = useState(setup.source);
  const [typed, setTyped] = useState<readonly (number | undefined)[]>(() => faceNumbers(setup.combination, profile));
  const own = readOwn(profile, typed);
  const isReady = source !== "own" || "numbers" in own;
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (!isReady) return;
    if (source !== "own") onTake(source);
    else if ("numbers" in own) onOwn(own.numbers);
    onClose();
  };
  return (
    <form onSubmit={take}>
      <fieldset>
        <legend className="visually-hidden">Where the combination comes from</legend>
        {SOURCES.map(({ source: one, label }) => (
          <label key={one} className="check">
            <input type="radio" name="source" checked={source === one} onChange={() => setSource(one)} />
            {label}
          </label>
        ))}
      </fieldset>
      {source === "own" && <OwnNumbers profile={profile} typed={typed} onTyped={setTyped} />}
      <div className="row mt-4">
        <Button type="submit" className="primary" disabled={!isReady}>
          Set the lock
        </Button>
      </div>
      <p className="text-soft">
        This is a practice lock. Never enter a combination that is in use on a real door. On a real lock, always try a
        new combination with the door open.
      </p>
    </form>
  );
}

/** Chooses where the combination comes from. The rules it breaks are shown, with their source, but do not stop it. */
export function CombinationSheet(props: CombinationSheetProps) {
  return (
    <Dialog title="Combination" isOpen={props.isOpen} onClose={props.onClose}>
      <CombinationForm {...props} />
    </Dialog>
  );
}
