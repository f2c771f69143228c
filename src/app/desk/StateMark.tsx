import { type CellState, STATE_WORDS } from "./cellWords";

const SHAPES: Readonly<Record<CellState, string>> = {
  ready: "M7 1l6 6l-6 6l-6 -6z",
  "not-yet": "M7 1l6 6l-6 6l-6 -6z",
  none: "M2 7h10",
};

/** How far someone is, by shape and by word: a full diamond, an empty one, a dash. */
export function StateMark({ state }: { readonly state: CellState }) {
  return (
    <span className="desk-state">
      <svg viewBox="0 0 14 14" width="13" height="13" aria-hidden="true">
        <path className={`desk-mark ${state}`} d={SHAPES[state]} />
      </svg>
      {STATE_WORDS[state]}
    </span>
  );
}
