import type { Turn } from "../../../lock/dial";

/** Left runs are heavy and in ink, right runs light and in the accent. */
export const TURN_LOOK: Readonly<Record<Turn, { readonly className: string; readonly strokeWidth: number }>> = {
  left: { className: "text-ink", strokeWidth: 2.25 },
  right: { className: "text-accent", strokeWidth: 1.25 },
};
