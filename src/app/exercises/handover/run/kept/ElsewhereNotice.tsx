import { useEffect, useState } from "react";
import { Notice } from "../../../../parts/Notice";
import type { HandoverSession } from "../session/handoverSession";
import { RUN_KEY } from "../session/keptRun";
import type { RunKeeper } from "./runKeeper";

interface ElsewhereNoticeProps {
  readonly session: HandoverSession;
  readonly keeper: RunKeeper;
}

/** Says, at once, that another tab has gone on with the handover; nothing while this one keeps it. */
export function ElsewhereNotice({ session, keeper }: ElsewhereNoticeProps) {
  const [isOurs, setIsOurs] = useState(true);
  useEffect(() => {
    const onOther = ({ key, newValue }: StorageEvent) => {
      if (key === RUN_KEY) setIsOurs(keeper.heard(newValue, session.recorded));
    };
    addEventListener("storage", onOther);
    return () => removeEventListener("storage", onOther);
  }, [session, keeper]);
  if (isOurs) return null;
  return (
    <Notice className="mx-6 my-3 print:hidden">
      Another tab has gone on with this handover, so what you do in this tab is not saved any more. Reload this page to
      go on with the other.
    </Notice>
  );
}
