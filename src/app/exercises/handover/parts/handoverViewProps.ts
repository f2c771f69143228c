import type { Chance } from "../../../../statistics/chance";

/** What each part of the handover is given. */
export interface HandoverViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}
