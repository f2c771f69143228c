import type { HubReading } from "./useHubReading";

interface HandButtonsProps {
  readonly reading: HubReading;
  readonly onRestart: (isNew: boolean) => void;
}

/** The buttons beside the dial: the reading in its hub, the attempt again, and other numbers. */
export function HandButtons({ reading, onRestart }: HandButtonsProps) {
  return (
    <>
      {reading.toggle !== null && (
        <button
          type="button"
          className="button workplace-reading"
          aria-keyshortcuts="D"
          title="The digital reading in the middle of the dial. It fades as you learn to read the mark at the index."
          onClick={reading.toggle}
        >
          {reading.strength === "shown" ? "Hide digits" : "Show digits"} <kbd>D</kbd>
        </button>
      )}
      <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => onRestart(false)}>
        Again <kbd>R</kbd>
      </button>
      <button type="button" className="button workplace-new" aria-keyshortcuts="N" onClick={() => onRestart(true)}>
        New numbers <kbd>N</kbd>
      </button>
    </>
  );
}
