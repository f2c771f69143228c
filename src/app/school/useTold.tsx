import { type ReactNode, useState } from "react";
import { messageOf } from "../parts/page/messageOf";

/** Does what is asked for, and says what came of it: done, or why not. */
export function useTold() {
  const [told, setTold] = useState<{ readonly text: string; readonly isProblem: boolean } | null>(null);
  const act = (doing: () => Promise<string>) =>
    doing().then(
      (text) => setTold({ text, isProblem: false }),
      (error: unknown) => setTold({ text: messageOf(error), isProblem: true }),
    );
  const line: ReactNode = (
    <div className={told?.isProblem === true ? "notice mt-4" : ""}>
      <p role="status">{told?.isProblem === false && told.text}</p>
      {told?.isProblem === true && <p role="alert">{told.text}</p>}
    </div>
  );
  return { act, line };
}
