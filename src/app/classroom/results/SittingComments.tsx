import { type FormEvent, useState } from "react";
import { commentList } from "../../../school/wire/assignmentsWire";
import { useAsked } from "../../keeping/useLogbook";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";

const LONGEST = 2000;
const momentText = (moment: number) => `${dayText(moment)}, ${clockText(moment)}`;

/** What instructors said of a sitting, and one thing more: the apprentice reads it at the bench. */
export function SittingComments({ asking, sittingId }: { readonly asking: Asking; readonly sittingId: string }) {
  const [version, setVersion] = useState(0);
  const [text, setText] = useState("");
  const path = `/sittings/${sittingId}/comments`;
  const { answer, problem } = useAsked(`${sittingId} ${version}`, () => asking.read(path, commentList));
  const { told, act } = useDoing();
  const leave = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === "") return;
    act(async () => {
      await asking.change(path, commentList, { text: text.trim() });
      setText("");
      setVersion(version + 1);
      return "The comment is saved. It is shown at the bench where this person sits next.";
    });
  };
  return (
    <section className="stack print:hidden" aria-labelledby="sitting-comments">
      <h2 id="sitting-comments">Comments for the apprentice</h2>
      {problem !== null && <Notice className="">{problem}</Notice>}
      <ul className="plain">
        {answer?.comments.map(({ id, text: said, by, at, readAt }) => (
          <li key={id} className="py-2 ruled">
            <span className="min-w-0">
              <span className="block wrap-anywhere whitespace-pre-line">{said}</span>
              <small>
                {shownName(by)}, {momentText(at)}; {readAt === null ? "not read yet" : `read ${momentText(readAt)}`}
              </small>
            </span>
          </li>
        ))}
      </ul>
      <form className="stack" onSubmit={leave}>
        <label className="block">
          New comment
          <textarea
            className="field block w-full mt-2 min-h-[88px]"
            value={text}
            maxLength={LONGEST}
            onChange={({ currentTarget }) => setText(currentTarget.value)}
          />
        </label>
        <button type="submit" className="button self-start">
          Leave the comment
        </button>
      </form>
      <ToldLine told={told} />
    </section>
  );
}
