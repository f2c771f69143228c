import { useState } from "react";
import { messageOf } from "../shell/messageOf";

/** Something that was done, or why not. */
interface Told {
  readonly text: string;
  readonly isProblem: boolean;
}

/** Does what is asked for, and tells what came of it; `say` tells something on the way. */
export function useDoing() {
  const [told, setTold] = useState<Told | null>(null);
  const act = (doing: () => Promise<string>) =>
    doing().then(
      (text) => setTold({ text, isProblem: false }),
      (error) => setTold({ text: messageOf(error), isProblem: true }),
    );
  const say = (text: string) => setTold({ text, isProblem: false });
  return { told, act, say };
}

/** What came of it, for eyes and ears. */
export function ToldLine({ told }: { readonly told: Told | null }) {
  return (
    <>
      <p role="status">{told !== null && !told.isProblem && told.text}</p>
      {told?.isProblem === true && (
        <p className="sheet-error" role="alert">
          {told.text}
        </p>
      )}
    </>
  );
}
