import type { ReactNode } from "react";

interface NoticeProps {
  readonly className?: string;
  readonly children: ReactNode;
}

/** What is wrong here and what to do, said at once. */
export const Notice = ({ className = "mt-4", children }: NoticeProps) => (
  <p className={`notice ${className}`} role="alert">
    {children}
  </p>
);
