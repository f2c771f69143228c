import { useEffect, useRef } from "react";

interface StepHeadProps {
  /** Which of the three steps it heads, from 1. */
  readonly number: 1 | 2 | 3;
  readonly title: string;
}

/** The heading of a step of the setup. Reading and keys go on here as it comes up. */
export function StepHead({ number, title }: StepHeadProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <h3 ref={heading} className="text-body font-semibold" tabIndex={-1}>
      <span className="text-soft">Step {number} of 3:</span> {title}
    </h3>
  );
}
