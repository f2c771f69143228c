import type { HandoverViewProps } from "../HandoverScreen";

/** To be replaced by its owner. */
export function ChangeView({ query }: HandoverViewProps) {
  return <p>{query.get("view")}</p>;
}
