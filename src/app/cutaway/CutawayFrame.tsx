import type { ReactNode } from "react";

/** The frame that the inside of every kind of lock is shown in. */
export function CutawayFrame({ children }: { children: ReactNode }) {
  return (
    <section className="cutaway" aria-label="Cutaway">
      <h2>
        Cutaway <small>what your turning moves inside the lock</small>
      </h2>
      {children}
    </section>
  );
}
