import type { Turn } from "../../../lock/dial";

/** The arc that shows which way to turn: over the right shoulder of the knob, or its mirror image. */
export function TurnArrow({ turn }: { readonly turn: Turn }) {
  return (
    <g
      className="dial-arrow fill-none stroke-accent"
      strokeWidth={4.5}
      strokeLinecap="round"
      strokeLinejoin="round"
      transform={turn === "left" ? "scale(-1 1)" : undefined}
    >
      <path d="M 52 -131 A 141 141 0 0 1 133 -47" />
      <path d="M 136 -66 L 134 -44 L 117 -58" />
    </g>
  );
}
