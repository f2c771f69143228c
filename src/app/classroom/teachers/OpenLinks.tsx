import type * as z from "zod/mini";
import { openLinks } from "../../../school/wire/instructorsWire";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import type { Asking } from "../asking/asking";

type Link = z.infer<typeof openLinks>["links"][number];

const linkText = ({ role, instructor }: Link): string =>
  instructor === null ? `Invites one ${role}` : `Sets a new password of ${shownName(instructor.name)}`;

interface LinksProps {
  readonly asking: Asking;
  /** Asked anew with it. */
  readonly version: number;
  readonly onTakeBack: (linkId: string) => void;
}

/** Links that nobody has used yet; one that went astray is taken back. */
export function OpenLinks({ asking, version, onTakeBack }: LinksProps) {
  const { answer, problem } = useAsked(`links ${version}`, () => asking.read("/links", openLinks));
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null || answer.links.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="open-links">
      <h2 id="open-links">Links that nobody has used</h2>
      <ul className="plain">
        {answer.links.map((link) => (
          <li key={link.id} className="flex items-center justify-between gap-4 py-2 ruled">
            <span className="min-w-0 wrap-anywhere">
              {linkText(link)}
              <small className="block">
                made {dayText(link.createdAt)}, {clockText(link.createdAt)}; works until {dayText(link.expiresAt)},{" "}
                {clockText(link.expiresAt)}
              </small>
            </span>
            <Button onClick={() => onTakeBack(link.id)}>Take it back</Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
