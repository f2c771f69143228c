import { type PointerEvent, useEffect, useLayoutEffect, useMemo, useRef } from "react";
import { turnedParts } from "../../../../fitting/teaching/turnedParts";
import { reading } from "../../../../lock/dial";
import { listen } from "../../../hand/sources/dialSource";
import { KEYS } from "../../../hand/sources/keys";
import { useStore } from "../../../parts/page/useStore";
import { SectionDrawing } from "../seen/SectionDrawing";
import { HandOnDial, type LockInWork } from "./handOnDial";
import { turnedText } from "./turnWords";
import { useGlide } from "./useGlide";

interface TurnedSectionProps {
  readonly work: LockInWork;
}

/** How far a hand turns the dial for each pixel up: as far as its radius turns it by one radian. @param grip - as high as the dial */
const perPixel = (grip: Element, perTurn: number) => perTurn / (Math.PI * grip.getBoundingClientRect().height);

/** Whether a part is still in the tray. */
const isComplete = ({ ring, body, dialIn, key, strike, hasCover }: LockInWork["assembly"]) =>
  hasCover && [ring, body, dialIn, key, strike].every((part) => part !== null);

/**
 * The section through the door, and a hand on its dial: by pointer, up and down as one turns a dial that one sees from the
 * side, or by keys. Whoever looks is at the operator's right, so what goes down there turns the dial to the right, and in.
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
  const from = useRef<number>(null);
  useEffect(() => {
    const { current: element } = figure;
    if (element === null || KEYS.start === undefined) return;
    const position = () => hand.turned - hand.screwed;
    const end = KEYS.start({ element, perTurn, position }, (by) => hand.turn(by));
    // After the keys have turned on to a whole graduation.
    const letGo = () => hand.letGo();
    const endLettingGo = listen(element, { keyup: letGo, blur: letGo });
    return () => {
      end();
      endLettingGo();
      hand.letGo();
    };
  }, [hand, perTurn]);
  const drop = () => {
    from.current = null;
    hand.letGo();
  };
  const grip = {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0) return;
      from.current = event.clientY;
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent) => {
      if (from.current === null) return;
      const up = from.current - event.clientY;
      from.current = event.clientY;
      hand.turn(up * perPixel(event.currentTarget, perTurn));
    },
    onPointerUp: drop,
    onPointerCancel: drop,
  };
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
        className="fitting-turned"
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
