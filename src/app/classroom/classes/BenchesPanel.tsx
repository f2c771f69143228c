import { useState } from "react";
import type * as z from "zod/mini";
import { deviceList } from "../../../school/wire/classWire";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { OfClass } from "../asking/classProps";

type Bench = z.infer<typeof deviceList>["devices"][number];

const peopleText = ({ people }: Bench) =>
  people.length === 0 ? "nobody" : people.map(({ name }) => shownName(name)).join(", ");

/** The benches that joined a class; one that was lost or lent is signed out. */
export function BenchesPanel({ asking, one }: OfClass) {
  const [version, setVersion] = useState(0);
  const { answer, problem } = useAsked(`benches ${one.id} ${version}`, () =>
    asking.read(`/classes/${one.id}/devices`, deviceList),
  );
  const { told, act } = useDoing();
  const signOut = ({ id, name }: Bench) =>
    act(async () => {
      await asking.act(`/devices/${id}/sign-out`);
      setVersion(version + 1);
      return `${shownName(name)} is signed out. What it has not sent stays on it until someone joins there again.`;
    });
  return (
    <section className="stack" aria-labelledby="class-benches">
      <h2 id="class-benches">Benches of this class</h2>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer?.devices.length === 0 && <p>No bench has joined yet.</p>}
      <ul className="plain">
        {answer?.devices.map((bench) => (
          <li key={bench.id} className="flex items-center justify-between gap-4 py-2 ruled">
            <span className="min-w-0 wrap-anywhere">
              <b className="font-medium">{shownName(bench.name)}</b>
              <small className="block">
                {peopleText(bench)}; last seen {dayText(bench.seenAt)}, {clockText(bench.seenAt)}
              </small>
            </span>
            {bench.signedOutAt === null ? (
              <Button onClick={() => signOut(bench)}>
                Sign out<span className="visually-hidden"> {shownName(bench.name)}</span>
              </Button>
            ) : (
              <small>signed out {dayText(bench.signedOutAt)}</small>
            )}
          </li>
        ))}
      </ul>
      <ToldLine told={told} />
    </section>
  );
}
