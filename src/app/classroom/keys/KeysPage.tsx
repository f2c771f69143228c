import { useState } from "react";
import { PROVES, PROVES_NOT } from "../../../school/signing/receipt";
import { type SchoolKeys, schoolKeysSchema } from "../../../school/signing/schoolKeys";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { fileNameOf } from "../../parts/files/fileName";
import { saveFile } from "../../parts/files/saveFile";
import { dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";
import { NewKey } from "./NewKey";

type Key = SchoolKeys["keys"][number];

const sinceText = ({ createdAt, retiredAt }: Key) =>
  retiredAt === null
    ? `signs since ${dayText(createdAt)}`
    : `signed from ${dayText(createdAt)} to ${dayText(retiredAt)}; what it signed then stays valid`;

/** What a school signs with: fingerprints to print, the file of its public keys, and a new key by the head. */
export function KeysPage({ asking }: { readonly asking: Asking }) {
  const [version, setVersion] = useState(0);
  const { answer, problem } = useAsked(`keys ${version}`, () => asking.read("/school/keys", schoolKeysSchema));
  const { told, act, say } = useDoing();
  const { school, instructor } = asking.signedIn;
  const save = (keys: SchoolKeys) => {
    const name = fileNameOf({ what: "school keys", person: school.name, at: Date.now(), ending: "json" });
    saveFile({ name, type: "application/json", text: `${JSON.stringify(keys, null, 2)}\n` });
    say(`${name} is saved. Whoever checks records on the command line gives it with --key.`);
  };
  const makeNew = () =>
    act(async () => {
      await asking.change("/school/keys/rotate", schoolKeysSchema);
      setVersion(version + 1);
      return "The new key is made. Print its fingerprint.";
    });
  return (
    <>
      <h1 tabIndex={-1}>Signing keys of {shownName(school.name)}</h1>
      <p>
        The class server signs the records of sittings. Whoever checks a signed record, on the page “Sittings” or on the
        command line, compares its key with a fingerprint on this page. Print it where everyone can see it.
      </p>
      {problem !== null && <Notice className="">{problem}</Notice>}
      <ul className="plain" aria-label="Fingerprints">
        {answer?.keys.toReversed().map((key) => (
          <li key={key.fingerprint} className="py-2 ruled wrap-anywhere">
            <b className="text-lead">{key.fingerprint}</b>
            <small className="block">{sinceText(key)}</small>
          </li>
        ))}
      </ul>
      <p className="text-small">
        What a signature proves: {PROVES} {PROVES_NOT}
      </p>
      {answer !== null && (
        <div className="row print:hidden">
          <Button className="primary" onClick={() => print()}>
            Print the fingerprints
          </Button>
          <Button onClick={() => save(answer)}>Save the public keys</Button>
          {instructor.role === "head" && <NewKey onMake={makeNew} />}
        </div>
      )}
      <ToldLine told={told} />
    </>
  );
}
