import { useLayoutEffect, useMemo, useRef } from "react";
import { turnedParts } from "../../../../fitting/teaching/turnedParts";
import { reading } from "../../../../lock/dial";
import { useStore } from "../../../parts/page/useStore";
import { useTurning } from "../instruments/useTurning";
import { SectionDrawing } from "../seen/SectionDrawing";
import { HandOnDial, type LockInWork } from "./handOnDial";
import { turnedText } from "./turnWords";
import { useGlide } from "./useGlide";

interface TurnedSectionProps {
  readonly work: LockInWork;
}

/** Whether a part is still in the tray. */
const isComplete = ({ ring, body, dialIn, key, strike, hasCover }: LockInWork["assembly"]) =>
  hasCover && [ring, body, dialIn, key, strike].every((part) => part !== null);

/**
 * The section through the door, and a hand on its dial: by pointer, up and down as one turns a dial that one sees from the
 * side, or by keys.
 */
export function TurnedSection({ work }: TurnedSectionProps) {
  const { assembly, lock } = work;
  const { perTurn } = lock;
  const hasKey = assembly.key !== null;
  const latest = useRef(work);
  useLayoutEffect(() => {
    latest.current = work;
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another key, another hand
  const hand = useStore(useMemo(() => new HandOnDial(() => latest.current), [hasKey]));
  const figure = useRef<HTMLDivElement>(null);
  const grip = useTurning(figure, {
    perTurn,
    position: () => hand.turned - hand.screwed,
    turn: (by) => hand.turn(by),
    letGo: () => hand.letGo(),
  });
  const shown = hand.inHand(work);
  const dialIn = useGlide(shown.dialIn ?? 0, hand.isHeld || shown.dialIn === null);
  const drawn = shown.dialIn === null ? shown : { ...shown, dialIn };
  const turned = turnedParts(shown, lock, hand.turned);
  const text = turnedText(shown, lock, turned);
  return (
    <figure className="fitting-section w-full max-w-[760px]">
      <div
        ref={figure}
        role="slider"
        tabIndex={0}
        aria-label="Dial, seen from the side"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={perTurn}
        aria-valuenow={Number(reading(turned.dial, perTurn).toFixed(1))}
        aria-valuetext={text}
      >
        <SectionDrawing assembly={drawn} lock={lock} turned={hand.turned} grip={grip} />
      </div>
      <figcaption className="text-fine text-soft">
        <span className="block text-small text-ink phone:min-h-[2.9em]" aria-hidden="true">
          {text}
        </span>
        Drag the dial down to turn it right{hasKey ? "" : ", which screws it in"}, or use the arrow keys.{" "}
        <span className="phone:hidden">Cut through the middle of the door; bolt and strike beside it. </span>
        {!isComplete(assembly) && "Dashed: still in the tray."}
      </figcaption>
    </figure>
  );
}
