import type { Help } from "../../dialing/advice";
import { Button } from "../parts/controls/Button";

/** How much help, and what it brings. */
export interface HelpOffer {
  readonly help: Help;
  readonly label: string;
  readonly title: string;
}

const HELPS: readonly HelpOffer[] = [
  { help: "full", label: "Full", title: "Full help: what to do now and how far to turn" },
  { help: "counts", label: "Counts", title: "Counts: arrivals are counted, no distances until the end" },
  { help: "silent", label: "Silent", title: "Silent: nothing is shown until the attempt ends" },
];

interface HelpChoiceProps {
  readonly help: Help;
  readonly onHelp: (help: Help) => void;
  readonly offers?: readonly HelpOffer[];
}

/** How much help one has while one dials. */
export function HelpChoice({ help, onHelp, offers = HELPS }: HelpChoiceProps) {
  return (
    <fieldset className="setup-help flex">
      <legend className="visually-hidden">Help</legend>
      {offers.map(({ help: one, label, title }) => (
        <Button key={one} title={title} aria-pressed={help === one} onClick={() => onHelp(one)}>
          {label}
        </Button>
      ))}
    </fieldset>
  );
}
