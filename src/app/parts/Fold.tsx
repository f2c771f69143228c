import { type ReactNode, useSyncExternalStore } from "react";

interface FoldProps {
  /** What is in it. */
  readonly title: ReactNode;
  readonly children: ReactNode;
}

const PHONE = "(max-width: 700px)";

function subscribe(onChange: () => void) {
  const query = matchMedia(PHONE);
  query.addEventListener("change", onChange);
  return () => query.removeEventListener("change", onChange);
}

/** Details that are open where there is room for them, and closed on a phone until they are asked for. */
export function Fold({ title, children }: FoldProps) {
  const isPhone = useSyncExternalStore(subscribe, () => matchMedia(PHONE).matches);
  return (
    <details open={!isPhone}>
      <summary className="py-1 phone:py-3">{title}</summary>
      {children}
    </details>
  );
}
