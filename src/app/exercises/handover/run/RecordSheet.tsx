import { type FormEvent, useState } from "react";
import { faceNumber } from "../../../../lock/dial";
import { formSentence } from "../../../../records/handover/formWords";
import { CHANGE_EVENTS, CHANGE_SOURCE } from "../../../../records/handover/nextChange";
import {
  RECORD_FIELDS,
  type RecordField,
  type RecordForm,
  recordProblems,
} from "../../../../records/handover/recordForm";
import type { Problem } from "../../../../wording/problem";
import { Button } from "../../../parts/controls/Button";
import { Dialog } from "../../../parts/controls/Dialog";
import { Lines } from "../../../parts/Lines";
import type { HandoverSession } from "./session/handoverSession";

const FIELDS = Object.keys(RECORD_FIELDS) as RecordField[];

const today = () => {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
};

function firstForm({ recorded: { scene } }: HandoverSession): RecordForm {
  const { second, lock, door } = scene;
  return {
    technician: "",
    second,
    takenOverBy: "",
    authorizedBy: "",
    lock,
    door,
    date: today(),
    holders: "",
    remarks: "",
  };
}

/** Combinations that may not be in the record: what is set, and what it came with. */
function secretsOf({ setup: { profile }, lock, shipped }: HandoverSession) {
  const { graduations, numbersIncrease } = profile;
  return [lock.meant, shipped].map((numbers) => ({
    combination: numbers.map((number) => faceNumber(number, graduations, numbersIncrease)),
    graduations,
  }));
}

interface RecordSheetProps {
  readonly session: HandoverSession;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

/** The form of the record. It refuses the combination, and says why. */
export function RecordSheet({ session, isOpen, onClose }: RecordSheetProps) {
  const [form, setForm] = useState(() => session.form ?? firstForm(session));
  const isAuthorized = session.run.situation.mounting === "authorized";
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = recordProblems(form, secretsOf(session), isAuthorized);
    setProblems(found);
    if (found.some(({ code }) => code.startsWith("combination")))
      session.act({ type: "record.refused" }, performance.now());
    else if (found.length === 0) {
      session.writeRecord(form, performance.now());
      onClose();
    }
  };
  return (
    <Dialog title="The record" isOpen={isOpen} onClose={onClose}>
      <form className="run-record tiles-[220px] gap-4" onSubmit={submit}>
        {FIELDS.filter((field) => field !== "authorizedBy" || isAuthorized).map((field) => (
          <label className="grid gap-1" key={field}>
            {RECORD_FIELDS[field]}
            <input
              className="field"
              type={field === "date" ? "date" : "text"}
              value={form[field]}
              autoComplete="off"
              aria-invalid={problems.some(({ path }) => path[0] === field)}
              onChange={(event) => setForm({ ...form, [field]: event.currentTarget.value })}
            />
          </label>
        ))}
        {problems.length > 0 && <Lines className="notice pl-6" role="alert" of={problems.map(formSentence)} />}
        <p className="text-small text-soft">
          Who holds the combination, never what it is. It is changed when {CHANGE_EVENTS.join("; ")} ({CHANGE_SOURCE}).
        </p>
        <Button type="submit" className="primary justify-self-start">
          Write the record
        </Button>
      </form>
    </Dialog>
  );
}
