import { type ReactNode, useEffect, useRef } from "react";

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
    <section className="card" aria-labelledby="setup-task">
      <h2 ref={heading} id="setup-task" className="text-lead" tabIndex={-1}>
        {title}
      </h2>
      {children}
    </section>
  );
}
