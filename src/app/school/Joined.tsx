import { useState } from "react";
import type { PersonRecord } from "../../records/records";
import type { JoiningRow } from "../../store/marks/outboxMarks";
import { Button } from "../parts/controls/Button";
import { Select } from "../parts/controls/Select";
import { shownName } from "../parts/shownName";
import type { SchoolBench } from "./schoolBench";
import { useTold } from "./useTold";

interface JoinedProps {
  readonly bench: SchoolBench;
  readonly joining: JoiningRow;
  readonly locals: readonly PersonRecord[];
  readonly before: PersonRecord | null;
}

const sameName = (one: string, other: string) => one.trim().toLocaleLowerCase() === other.trim().toLocaleLowerCase();

/** Whose records are offered first: whoever has the same name, or else practiced here before. */
const likeliest = (locals: readonly PersonRecord[], name: string, before: PersonRecord | null) =>
  locals.find((one) => sameName(one.name, name)) ?? locals.find(({ id }) => id === before?.id) ?? locals[0];

/** Who joined, and the question whose the records are that this bench has already. */
export function Joined({ bench, joining, locals, before }: JoinedProps) {
  const name = shownName(joining.name);
  const [chosen, setChosen] = useState(() => likeliest(locals, joining.name, before)?.id ?? "");
  const [isAnswered, setIsAnswered] = useState(locals.length === 0);
  const { line, act } = useTold();
  const other = locals.find(({ id }) => id === chosen);
  const merge = async () => {
    if (other === undefined) return "";
    await bench.merge(other.id, joining.id);
    setIsAnswered(true);
    return `The records of ${shownName(other.name)} are now yours, and go to the class.`;
  };
  return (
    <>
      <p role="status">
        You are <b>{name}</b> in {shownName(joining.class.name)}, {shownName(joining.school.name)}.
      </p>
      {!isAnswered && (
        <section className="plate p-6 grid gap-4" aria-labelledby="earlier-records">
          <h2 id="earlier-records">Are the records on this bench yours?</h2>
          <p>
            Someone practiced here before you joined. If it was you, your class gets these records too. You cannot undo
            this. If it was someone else, leave them as they are.
          </p>
          <label>
            Records of{" "}
            <Select
              value={chosen}
              choices={locals.map((one) => [one.id, shownName(one.name)] as const)}
              onChoice={setChosen}
            />
          </label>
          <div className="row gap-x-4">
            <Button onClick={() => act(merge)}>They are mine: give them to {name}</Button>
            <Button onClick={() => setIsAnswered(true)}>They are not mine</Button>
          </div>
        </section>
      )}
      {line}
      {isAnswered && (
        <p>
          <a className="button primary" href="#/start" ref={(link) => link?.focus()}>
            Go to the start page
          </a>
        </p>
      )}
    </>
  );
}
