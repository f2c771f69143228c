import { useRef, useState } from "react";
import { Button } from "./controls/Button";
import { messageOf } from "./page/messageOf";

/** Something that was done, or why not. */
interface Told {
  readonly text: string;
  readonly isProblem: boolean;
  readonly close: () => void;
}

/** Does what is asked for, and tells what came of it and whether it was done; `say` tells something on the way. */
export function useDoing() {
  const [told, setTold] = useState<Told | null>(null);
  const close = () => setTold(null);
  const say = (text: string) => setTold({ text, isProblem: false, close });
  const act = (doing: () => Promise<string>) =>
    doing().then(
      (text) => {
        say(text);
        return true;
      },
      (error) => {
        setTold({ text: messageOf(error), isProblem: true, close });
        return false;
      },
    );
  return { told, act, say };
}

/** What came of it, for eyes and ears, until it is closed; then the focus stays in its place. */
export function ToldLine({ told }: { readonly told: Told | null }) {
  const place = useRef<HTMLDivElement>(null);
  const close = () => {
    told?.close();
    place.current?.focus();
  };
  return (
    <div
      className={`wrap-anywhere outline-none print:hidden has-[.button]:flex flex-wrap items-center gap-x-4 gap-y-2 ${told?.isProblem === true ? "notice mt-4" : ""}`}
      ref={place}
      tabIndex={-1}
    >
      <p role="status">{told !== null && !told.isProblem && told.text}</p>
      {told?.isProblem === true && <p role="alert">{told.text}</p>}
      {told !== null && (
        <Button className="slim text-small" aria-label="Close this message" onClick={close}>
          Close
        </Button>
      )}
    </div>
  );
}
