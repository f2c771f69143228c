import { useEffect, useState } from "react";
import * as z from "zod/mini";
import { commentList } from "../../school/wire/assignmentsWire";
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
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are asked for once, when they are opened
  useEffect(() => {
    const path = `/bench/people/${encodeURIComponent(personId)}/comments`;
    void (async () => {
      const answer = await askServer(path, commentList);
      if (answer.kind !== "answered") return;
      setComments(answer.value.comments);
      await askServer(`${path}/read`, z.unknown(), jsonBody({}));
      onRead();
    })();
  }, [personId]);
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
