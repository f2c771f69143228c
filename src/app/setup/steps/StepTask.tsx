import { type ReactNode, useEffect, useRef } from "react";

const HEADING = "setup-task";

/** Reading and keys go on at the task: what was pressed is gone. */
export const focusTask = () => document.getElementById(HEADING)?.focus();

interface StepTaskProps {
  readonly title: string;
  /** Whether it came up by itself, so that reading goes on here. */
  readonly isFirst: boolean;
  readonly children: ReactNode;
}

/** The one thing to do now. Reading and keys go on at its heading as it comes up. */
export function StepTask({ title, isFirst, children }: StepTaskProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!isFirst) heading.current?.focus();
  }, [isFirst]);
  return (
    <section className="card" aria-labelledby={HEADING}>
      <h2 ref={heading} id={HEADING} className="text-lead" tabIndex={-1}>
        {title}
      </h2>
      {children}
    </section>
  );
}
