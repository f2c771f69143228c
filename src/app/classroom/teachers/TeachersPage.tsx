import { useState } from "react";
import type * as z from "zod/mini";
import { instructorList, madeLink } from "../../../school/wire/instructorsWire";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { copyText } from "../../parts/files/copyText";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import { linkAddress } from "../address/classroomAddress";
import type { Asking } from "../asking/asking";
import { OpenLinks } from "./OpenLinks";

type Instructor = z.infer<typeof instructorList>["instructors"][number];

/** A link that was just made. */
interface Link {
  readonly address: string;
  readonly says: string;
  readonly expiresAt: number;
}

const ROLE_WORDS = { head: "head", instructor: "instructor" } as const;

/** A link for one use, shown this once. */
function LinkShown({ link }: { readonly link: Link }) {
  const { told, act } = useDoing();
  const copy = async () => {
    await copyText(link.address);
    return "The link is copied.";
  };
  return (
    <div className="card">
      <p>
        {link.says} It works once, until {dayText(link.expiresAt)}, {clockText(link.expiresAt)}, and is shown only now.
        Pass it on yourself: whoever has it can use it.
      </p>
      <p className="wrap-anywhere">
        <code>{link.address}</code>
      </p>
      <Button className="self-start" onClick={() => act(copy)}>
        Copy the link
      </Button>
      <ToldLine told={told} />
    </div>
  );
}

/** Those who teach at the school, for its head. */
export function TeachersPage({ asking }: { readonly asking: Asking }) {
  const [version, setVersion] = useState(0);
  const [link, setLink] = useState<Link | null>(null);
  const { answer, problem } = useAsked(`instructors ${version}`, () => asking.read("/instructors", instructorList));
  const { told, act } = useDoing();
  const invite = (role: Instructor["role"]) =>
    act(async () => {
      const { token, expiresAt } = await asking.change("/links", madeLink, { role });
      setLink({
        address: linkAddress("invited", token),
        says: `This link invites one ${ROLE_WORDS[role]}.`,
        expiresAt,
      });
      setVersion(version + 1);
      return "The link is made.";
    });
  const newPassword = ({ id, name }: Instructor) =>
    act(async () => {
      const { token, expiresAt } = await asking.change(`/instructors/${id}/password-link`, madeLink);
      const says = `With this link ${shownName(name)} sets a new password.`;
      setLink({ address: linkAddress("password", token), says, expiresAt });
      setVersion(version + 1);
      return "The link is made.";
    });
  const turn = ({ id, name, disabledAt }: Instructor) =>
    act(async () => {
      await asking.act(`/instructors/${id}/${disabledAt === null ? "disable" : "enable"}`);
      setVersion(version + 1);
      return `${shownName(name)} ${disabledAt === null ? "is signed out and cannot sign in" : "can sign in again"}.`;
    });
  const takeBack = (linkId: string) =>
    act(async () => {
      await asking.act(`/links/${linkId}/revoke`);
      setLink(null);
      setVersion(version + 1);
      return "The link does not work any more.";
    });
  return (
    <>
      <h1 tabIndex={-1}>Instructors</h1>
      {problem !== null && <Notice className="">{problem}</Notice>}
      <ul className="plain">
        {answer?.instructors.map((one) => (
          <li key={one.id} className="spread items-center gap-y-2 py-2 ruled">
            <span className="min-w-0 wrap-anywhere">
              <b className="font-medium">{shownName(one.name)}</b>
              <small className="block">
                {ROLE_WORDS[one.role]}, signs in as {shownName(one.login)}
                {one.disabledAt !== null && ", cannot sign in"}
              </small>
            </span>
            {one.id !== asking.signedIn.instructor.id && (
              <span className="row">
                {one.disabledAt === null && (
                  <Button onClick={() => newPassword(one)}>
                    Link for a new password<span className="visually-hidden"> for {shownName(one.name)}</span>
                  </Button>
                )}
                <Button onClick={() => turn(one)}>
                  {one.disabledAt === null ? "Block sign-in" : "Allow sign-in"}
                  <span className="visually-hidden"> of {shownName(one.name)}</span>
                </Button>
              </span>
            )}
          </li>
        ))}
      </ul>
      <div className="row">
        <Button onClick={() => invite("instructor")}>Invite an instructor</Button>
        <Button onClick={() => invite("head")}>Invite another head</Button>
      </div>
      {link !== null && <LinkShown key={link.address} link={link} />}
      <ToldLine told={told} />
      <OpenLinks asking={asking} version={version} onTakeBack={takeBack} />
    </>
  );
}
