import { memo } from "react";
import type { Words } from "./cutawayWords";

interface CutawayLabelProps {
  readonly name: string;
  /** A number of the combination. */
  readonly tag?: string;
  readonly first: Words;
  readonly second?: Words;
  /** Whether the part is being moved, or moves another. */
  readonly isMoving?: boolean;
  readonly isTrue?: boolean;
}

/** What stands under a part of the picture. */
export function CutawayLabel({ name, tag, first, second, isMoving = false, isTrue = false }: CutawayLabelProps) {
  return (
    <div className="cutaway-label grid content-start">
      <div className="cutaway-name flex flex-wrap justify-center content-start gap-x-2 text-fine text-ink">
        <span>{name}</span>
        {tag !== undefined && <b>{tag}</b>}
      </div>
      <Line a={first[0]} b={first[1]} kind={isTrue ? "cutaway-line text-ink *:first:font-semibold" : "cutaway-line"} />
      <Line a={second?.[0]} b={second?.[1]} kind={isMoving ? "cutaway-line text-accent" : "cutaway-line"} />
    </div>
  );
}

interface LineProps {
  readonly a: string | undefined;
  readonly b: string | undefined;
  readonly kind: string;
}

/** One line, or two where the column is narrow: always as many, so that nothing jumps when the words change. */
const Line = memo(function Line({ a, b, kind }: LineProps) {
  return (
    <div className={kind}>
      <span>{a}</span> <span>{b}</span>
    </div>
  );
});
