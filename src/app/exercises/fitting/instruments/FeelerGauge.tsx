import { useState } from "react";
import { LEAF_PLACES, LEAVES_mm } from "../../../../fitting/fitCheck";
import {
  isGapFound,
  type LeafFeel,
  type LeafPlace,
  type LeafTry,
  tryLeaf,
} from "../../../../fitting/instruments/feelerGauge";
import { Button } from "../../../parts/controls/Button";
import { Select } from "../../../parts/controls/Select";

interface FeelerGaugeProps {
  /** Gap at a place of the dial's rim, millimeters. @param part - of a turn, to the right of the top */
  readonly gapAt: (part: number) => number;
  /** Hears that the gap was found at each place. */
  readonly onFound: () => void;
}

const FEELS: Readonly<Record<LeafFeel, string>> = {
  loose: "goes in loosely",
  drags: "goes in with a light drag",
  "does-not-go": "does not go in",
};

const leafText = (leaf_mm: number) => `${leaf_mm.toFixed(2)} mm`;
const CHOICES = LEAVES_mm.map((leaf_mm) => [String(leaf_mm), leafText(leaf_mm)] as const);

/** Leaves that are tried between dial and ring, place by place, until two neighbors hold the gap between them. */
export function FeelerGauge({ gapAt, onFound }: FeelerGaugeProps) {
  const [leaf_mm, setLeaf] = useState(LEAVES_mm[9] ?? 0);
  const [tries, setTries] = useState<readonly LeafTry[]>([]);
  const [last] = tries;
  const attempt = (place: LeafPlace, part: number) => {
    const now = [{ place, leaf_mm, feel: tryLeaf(leaf_mm, gapAt(part)) }, ...tries];
    setTries(now);
    const isFound = (all: readonly LeafTry[]) => LEAF_PLACES.every(({ name }) => isGapFound(name, all));
    if (isFound(now) && !isFound(tries)) onFound();
  };
  return (
    <section className="stack" aria-label="Feeler gauge">
      <p className="text-small">
        Choose a leaf and try it between dial and ring, the dial at 0. The gap at a place is found once a leaf goes in
        and the next thicker one does not.
      </p>
      <div className="row gap-2 text-small">
        <Select aria-label="Leaf" value={String(leaf_mm)} choices={CHOICES} onChoice={(one) => setLeaf(Number(one))} />
        {LEAF_PLACES.map(({ name, part }) => (
          <Button key={name} className="slim" onClick={() => attempt(name, part)}>
            Try at the {name}
            {isGapFound(name, tries) && <span aria-hidden="true"> ●</span>}
            {isGapFound(name, tries) && <span className="visually-hidden">, found</span>}
          </Button>
        ))}
      </div>
      <p className="min-h-[1.45em] text-small" aria-live="polite">
        {last !== undefined && `At the ${last.place}, the ${leafText(last.leaf_mm)} leaf ${FEELS[last.feel]}.`}
      </p>
    </section>
  );
}
