import type { Turn } from "../../lock/dial";

/** Which way a button turns, drawn: letters differ from one computer to the next, and so would the buttons' sizes. */
export const TurnGlyph = ({ turn }: { readonly turn: Turn }) => (
  <svg
    aria-hidden
    viewBox="0 0 16 16"
    className="inline-block size-[1em] align-[-0.1em] fill-none stroke-current"
    strokeWidth={1.6}
    transform={turn === "left" ? undefined : "scale(-1 1)"}
  >
    <path d="M3 2v4h4M3.3 5.6A5.6 5.6 0 1 1 2.6 10" />
  </svg>
);
