import type { Help } from "../../dialing/advice";

const HELPS: readonly { readonly help: Help; readonly label: string; readonly title: string }[] = [
  { help: "full", label: "Full", title: "What to do, how far, and the cutaway" },
  { help: "counts", label: "Counts", title: "Arrivals counted, no distances" },
  { help: "silent", label: "Silent", title: "Nothing until the end, no cutaway" },
];

interface HelpChoiceProps {
  readonly help: Help;
  readonly onHelp: (help: Help) => void;
}

/** How much the trainer says while one dials. */
export function HelpChoice({ help, onHelp }: HelpChoiceProps) {
  return (
    <fieldset className="setup-help">
      <legend className="visually-hidden">Help</legend>
      {HELPS.map(({ help: one, label, title }) => (
        <button
          key={one}
          type="button"
          className="button"
          title={title}
          aria-pressed={help === one}
          onClick={() => onHelp(one)}
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}
