import { useState } from "react";
import type * as z from "zod/mini";
import { classList, schoolClass } from "../../../school/wire/classWire";
import { countText } from "../../../wording/amountWords";
import { useAsked } from "../../keeping/useLogbook";
import { dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import { classAddress } from "../address/classroomAddress";
import type { Asking } from "../asking/asking";
import { LineForm } from "../entry/LineForm";

type SchoolClass = z.infer<typeof schoolClass>;

function ClassRow({ one }: { readonly one: SchoolClass }) {
  return (
    <li className="spread py-3 ruled">
      <a className="font-medium wrap-anywhere" href={classAddress(one.id)}>
        {shownName(one.name)}
      </a>
      <small>
        {countText(one.people, "person", "people")}, since {dayText(one.createdAt)}
        {one.endedAt !== null && `, ended ${dayText(one.endedAt)}`}
      </small>
    </li>
  );
}

interface ListProps {
  readonly title: string;
  readonly classes: readonly SchoolClass[];
}

function List({ title, classes }: ListProps) {
  if (classes.length === 0) return null;
  return (
    <section className="stack">
      <h2>{title}</h2>
      <ul className="plain">
        {classes.map((one) => (
          <ClassRow key={one.id} one={one} />
        ))}
      </ul>
    </section>
  );
}

/** The classes of the school, and a new one. */
export function ClassList({ asking }: { readonly asking: Asking }) {
  const [version, setVersion] = useState(0);
  const { answer, problem } = useAsked(`classes ${version}`, () => asking.read("/classes", classList));
  const { told, act } = useDoing();
  const make = (name: string) =>
    act(async () => {
      await asking.change("/classes", schoolClass, { name });
      setVersion(version + 1);
      return `The class ${shownName(name)} is made. Open it, and make its class code.`;
    });
  const classes = answer?.classes ?? [];
  return (
    <>
      <h1 tabIndex={-1}>Classes</h1>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer?.classes.length === 0 && <p>There is no class yet. Make one: its code lets apprentices join.</p>}
      <List title="Classes now" classes={classes.filter(({ endedAt }) => endedAt === null)} />
      <LineForm label="Name of a new class" button="Make a class" isPrimary={classes.length === 0} onLine={make} />
      <ToldLine told={told} />
      <List title="Classes that ended" classes={classes.filter(({ endedAt }) => endedAt !== null)} />
      <p className="row gap-x-5 text-small">
        <a href="#/instructor/account">Your password and sign-ins</a>
        <a href="#/instructor/keys">Signing keys of the school</a>
      </p>
    </>
  );
}
