import { useCallback, useEffect, useState } from "react";
import { SchoolError } from "../../../school/schoolError";
import { signedIn } from "../../../school/wire/peopleWire";
import { messageOf } from "../../parts/page/messageOf";
import { Asking, ask, type SignedIn } from "./asking";

/** Whether an instructor is signed in at this browser. */
export type Standing =
  | { readonly kind: "asking" }
  | { readonly kind: "nobody" }
  | { readonly kind: "in"; readonly asking: Asking }
  | { readonly kind: "silent"; readonly says: string };

/** Who is signed in: asked once, then as signing in and out tell. @param isWanted - whether that is of use here */
export function useSignedIn(isWanted: boolean) {
  const [standing, setStanding] = useState<Standing>({ kind: "asking" });
  const leave = useCallback(() => setStanding({ kind: "nobody" }), []);
  const enter = useCallback(
    (answer: SignedIn) => setStanding({ kind: "in", asking: new Asking(answer, leave) }),
    [leave],
  );
  const look = useCallback(() => {
    ask("/me", signedIn).then(enter, (error) => {
      if (error instanceof SchoolError && error.code === "not-signed-in") leave();
      else setStanding({ kind: "silent", says: messageOf(error) });
    });
  }, [enter, leave]);
  const isUnknown = standing.kind === "asking";
  useEffect(() => {
    if (isWanted && isUnknown) look();
  }, [isWanted, isUnknown, look]);
  return { standing, enter, leave, look };
}
