import { type RefObject, useId, useState } from "react";
import { harmlessName } from "../../../lock/harmlessText";
import type { PersonRecord } from "../../../records/records";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";
import { useStored } from "../../parts/page/useStore";
import type { SittingSession } from "../session/sittingSession";

/** The logbook comes with it, so it is fetched when first needed. */
const fetchKeep = () => import("../../keeping/keep");

/** What is asked of whoever sits. */
export interface WhoForm {
  readonly people: readonly PersonRecord[];
  readonly isAsking: boolean;
  readonly ask: () => void;
  readonly name: string;
  readonly setName: (name: string) => void;
  readonly problem: string | null;
  readonly choose: (person: PersonRecord) => Promise<void>;
  /** Takes the name that was typed. @returns whether it is known now who sits */
  readonly settle: () => Promise<boolean>;
}

/** Who sits: whoever practices here, until somebody says otherwise. */
export function useWhoSits(session: SittingSession): WhoForm {
  const [isAsked, setAsked] = useState(false);
  const [name, setName] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  // Without a logbook the name is asked for all the same.
  const people = useAsked("own people", async () => (await fetchKeep()).ownPeople()).answer ?? [];
  const isAsking = useStored(session, ({ person }) => person) === null || isAsked;
  const take = (person: PersonRecord) => {
    session.sitAs(person);
    setAsked(false);
    setProblem(null);
  };
  const choose = async (person: PersonRecord) => {
    await (await fetchKeep()).practiceAs(person);
    take(person);
  };
  const settle = async () => {
    if (!isAsking) return true;
    try {
      take(await (await fetchKeep()).practiceUnder(name));
      return true;
    } catch (error) {
      setProblem(messageOf(error));
      return false;
    }
  };
  return { people, isAsking, ask: () => setAsked(true), name, setName, problem, choose, settle };
}

interface WhoSitsProps {
  readonly session: SittingSession;
  readonly form: WhoForm;
  readonly field: RefObject<HTMLInputElement | null>;
}

function Choice({ form, field }: Omit<WhoSitsProps, "session">) {
  const id = useId();
  return (
    <>
      {form.people.length > 0 && (
        <div className="row">
          {form.people.map((person) => (
            <Button key={person.id} onClick={() => form.choose(person)}>
              {harmlessName(person.name)}
            </Button>
          ))}
        </div>
      )}
      <div className="row mt-3">
        <label htmlFor={id}>{form.people.length > 0 ? "Someone else: your name" : "Your name"}</label>
        <input
          id={id}
          ref={field}
          className="field flex-1 min-w-[160px] max-w-[360px]"
          autoComplete="off"
          maxLength={100}
          value={form.name}
          aria-invalid={form.problem !== null}
          onChange={(event) => form.setName(event.currentTarget.value)}
        />
      </div>
    </>
  );
}

/** Says whose sitting this is, or asks: the name is on the screen, on the print and in the record. */
export function WhoSits({ session, form, field }: WhoSitsProps) {
  return (
    <section aria-label="Who takes this sitting">
      <h2 className="mb-3">
        Who takes this sitting <small>the name is saved in the record and printed on it</small>
      </h2>
      {form.isAsking ? (
        <Choice form={form} field={field} />
      ) : (
        <p>
          You are <b>{harmlessName(session.person ?? "")}</b>.{" "}
          {session.assignmentId === null && (
            <Button className="print:hidden" onClick={form.ask}>
              Not you?
            </Button>
          )}
        </p>
      )}
      {form.problem !== null && <Notice>{form.problem}</Notice>}
    </section>
  );
}
