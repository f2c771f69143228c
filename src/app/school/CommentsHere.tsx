import { useEffect, useState } from "react";
import * as z from "zod/mini";
import { commentList } from "../../school/wire/assignmentsWire";
import { Button } from "../parts/controls/Button";
import { shortDayText } from "../parts/moments";
import { shownName } from "../parts/shownName";
import { askServer, jsonBody } from "./askServer";

type Comments = z.output<typeof commentList>["comments"];

interface CommentsHereProps {
  readonly personId: string;
  /** Told once they are on the screen: they count as read. */
  readonly onRead: () => void;
}

/** What instructors said of the sittings of whoever practices here, the latest first. */
export function CommentsHere({ personId, onRead }: CommentsHereProps) {
  const [comments, setComments] = useState<Comments | null>(null);
  const [isMissing, setIsMissing] = useState(false);
  const ask = async () => {
    const path = `/bench/people/${encodeURIComponent(personId)}/comments`;
    const answer = await askServer(path, commentList);
    setIsMissing(answer.kind !== "answered");
    if (answer.kind !== "answered") return;
    setComments(answer.value.comments);
    await askServer(`${path}/read`, z.unknown(), jsonBody({}));
    onRead();
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are asked for once, when they are opened
  useEffect(() => void ask(), [personId]);
  if (isMissing) {
    return (
      <p className="mt-3" role="status">
        The class server did not send the comments. <Button onClick={() => void ask()}>Ask again</Button>
      </p>
    );
  }
  if (comments === null) return null;
  return (
    <ul className="plain mt-3" aria-label="Comments">
      {comments.map(({ id, title, text, by, at }) => (
        <li key={id}>
          <span>
            <small>
              {shownName(by)} on "{shownName(title)}", {shortDayText(at)}
            </small>
            <span className="block wrap-anywhere whitespace-pre-line">{text}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
