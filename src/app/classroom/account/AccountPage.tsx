import { useState } from "react";
import type * as z from "zod/mini";
import { harmlessText } from "../../../lock/harmlessText";
import { signInList } from "../../../school/wire/instructorsWire";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { type EntryField, EntryForm } from "../../parts/entry/EntryForm";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";

type OwnSignIn = z.infer<typeof signInList>["signIns"][number];

const FIELDS = [
  { name: "password", label: "Password now", fill: "current-password" },
  {
    name: "next",
    label: "New password",
    hint: "10 letters or more; a few words are good",
    fill: "new-password",
    least: 10,
  },
] as const satisfies readonly EntryField[];

/** What a browser says that it is. */
const browserText = ({ browser }: OwnSignIn): string => (browser === "" ? "A browser" : harmlessText(browser));

/** Where an instructor is signed in, and their password. */
export function AccountPage({ asking }: { readonly asking: Asking }) {
  const [version, setVersion] = useState(0);
  const [isOpen, setIsOpen] = useState(false);
  const { answer, problem } = useAsked(`sign-ins ${version}`, () => asking.read("/me/sign-ins", signInList));
  const { told, act, say } = useDoing();
  const end = ({ id }: OwnSignIn) =>
    act(async () => {
      await asking.act(`/me/sign-ins/${id}/end`);
      setVersion(version + 1);
      return "You are signed out there.";
    });
  const change = async (values: Readonly<Record<"password" | "next", string>>) => {
    await asking.act("/me/password", values);
    setIsOpen(false);
    setVersion(version + 1);
    say("Your password is changed. You are signed out everywhere else.");
  };
  return (
    <>
      <h1 tabIndex={-1}>Your sign-in</h1>
      {problem !== null && <Notice className="">{problem}</Notice>}
      <section className="stack" aria-labelledby="own-sign-ins">
        <h2 id="own-sign-ins">Where you are signed in</h2>
        <ul className="plain">
          {answer?.signIns.map((one) => (
            <li key={one.id} className="flex items-center justify-between gap-4 py-2 ruled">
              <span className="min-w-0 wrap-anywhere">
                {browserText(one)}
                <small className="block">
                  since {dayText(one.createdAt)}, {clockText(one.createdAt)}
                </small>
              </span>
              {one.isThis ? <small>this browser</small> : <Button onClick={() => end(one)}>Sign out there</Button>}
            </li>
          ))}
        </ul>
      </section>
      <div className="row">
        <Button aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
          Change your password
        </Button>
      </div>
      <ToldLine told={told} />
      <Dialog title="Change your password" isOpen={isOpen} onClose={() => setIsOpen(false)}>
        <EntryForm fields={FIELDS} button="Change the password" onEnter={change}>
          <Button onClick={() => setIsOpen(false)}>Cancel</Button>
        </EntryForm>
      </Dialog>
    </>
  );
}
