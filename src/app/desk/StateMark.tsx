import { type CellState, stateWord } from "./cellWords";

const SHAPES: Readonly<Record<CellState, string>> = {
  ready: "M7 1l6 6l-6 6l-6 -6z",
  lapsed: "M7 1l6 6l-6 6l-6 -6zM3 11L11 3",
  "not-yet": "M7 1l6 6l-6 6l-6 -6z",
  none: "M2 7h10",
};

interface StateMarkProps {
  readonly state: CellState;
  /** Whether it stands for a skill of jobs. */
  readonly isJob?: boolean | undefined;
}

/** How far someone is, by shape and by word: a full diamond, one struck through, an empty one, a dash. */
export function StateMark({ state, isJob = false }: StateMarkProps) {
  return (
    <span className="inline-flex items-baseline gap-3 font-medium">
      <svg viewBox="0 0 14 14" width="13" height="13" aria-hidden="true">
        <path
          className={state === "ready" ? "fill-ink stroke-ink" : "fill-none stroke-line"}
          strokeWidth={1.5}
          d={SHAPES[state]}
        />
      </svg>
      {stateWord(state, isJob)}
    </span>
  );
}
