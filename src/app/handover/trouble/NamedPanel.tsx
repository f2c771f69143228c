import { useEffect, useRef } from "react";
import { troubleSentence } from "../../../handover/trouble/troubleWords";
import { focusDial } from "../../dial/focusDial";
import type { TroubleSession } from "./troubleSession";

/** A diagnosis that stands: told now, or taken back. */
export function NamedPanel({ session }: { readonly session: TroubleSession }) {
  const { named } = session.memory;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  if (named === null) return null;
  const takeBack = () => {
    session.withdraw();
    focusDial();
  };
  return (
    <section className="panel" aria-label="Your diagnosis">
      <h2 ref={heading} tabIndex={-1}>
        Your diagnosis
      </h2>
      <p className="trouble-headline">{troubleSentence(named)}.</p>
      <p className="trouble-soft">Once you are told, this lock is marked and nothing more can be measured on it.</p>
      <p className="trouble-buttons">
        <button type="button" className="button primary" onClick={() => session.tell()}>
          It stands: tell me
        </button>
        <button type="button" className="button" onClick={takeBack}>
          Take it back
        </button>
      </p>
    </section>
  );
}
