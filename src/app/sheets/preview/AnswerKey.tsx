import { type ReactNode, useRef, useState } from "react";
import { Button } from "../../parts/controls/Button";

/** What an instructor alone is to see, behind a step that says what it shows. Never printed. */
export function AnswerKey({ children }: { readonly children: ReactNode }) {
  const [step, setStep] = useState<"closed" | "asked" | "open">("closed");
  const opener = useRef<HTMLButtonElement>(null);
  const close = () => {
    setStep("closed");
    requestAnimationFrame(() => opener.current?.focus());
  };
  if (step === "closed") {
    return (
      <p className="print:hidden">
        <Button ref={opener} onClick={() => setStep("asked")}>
          Answer key, for the instructor
        </Button>
      </p>
    );
  }
  if (step === "asked") {
    return (
      <div className="print:hidden">
        <p>
          This shows the hidden defects and conditions, and every try with its combination. Do not open it if you will
          sit this sheet.
        </p>
        <div className="row mt-4">
          <Button ref={(button) => button?.focus()} onClick={close}>
            Leave it closed
          </Button>
          <Button onClick={() => setStep("open")}>Show the answer key</Button>
        </div>
      </div>
    );
  }
  return (
    <section className="print:hidden" aria-label="Answer key">
      <Button ref={(button) => button?.focus()} onClick={close}>
        Hide the answer key
      </Button>
      {children}
    </section>
  );
}
