import type { Assembly } from "../../../../fitting/assembly";
import { gapOf, type LockToFit } from "../../../../fitting/fittedLock";
import { SectionLabels } from "./SectionLabels";
import { Body, Cover, Dial, Door, Key, Ring, Strike } from "./SectionParts";
import { DRAWN_mm, depthsOf, HEIGHT, strikeAt } from "./section";
import "./fitting.css";

const isComplete = ({ ring, body, dialIn, key, strike, hasCover }: Assembly) =>
  hasCover && [ring, body, dialIn, key, strike].every((part) => part !== null);

interface SectionDrawingProps {
  readonly assembly: Assembly;
  readonly lock: LockToFit;
}

/** The section through the door, to scale: what is put on, how deep the dial is, where the spindle ends; and the bolt beside it. */
export function SectionDrawing({ assembly, lock }: SectionDrawingProps) {
  const { spindle, dialIn } = assembly;
  const { sizes } = lock;
  const at = depthsOf(sizes);
  const back_mm = dialIn === null ? -DRAWN_mm.apart : -gapOf(lock, spindle.length_mm, dialIn);
  const parts = { assembly, sizes, at };
  return (
    <figure className="fitting-section w-full max-w-[760px]">
      <svg viewBox={`0 0 ${strikeAt(at) + 68} ${HEIGHT}`} aria-hidden="true">
        <defs>
          <pattern id="section-door" width={9} height={9} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path className="stroke-line" strokeWidth={0.8} d="M0 0V9" />
          </pattern>
        </defs>
        <Door at={at} />
        <Ring {...parts} />
        <Body {...parts} />
        <Dial assembly={assembly} sizes={sizes} back_mm={back_mm} />
        <Key {...parts} />
        <Cover {...parts} />
        <Strike {...parts} />
        <SectionLabels {...parts} back_mm={back_mm} />
      </svg>
      <figcaption className="text-fine text-soft">
        <span className="phone:hidden">Cut through the middle of the door; bolt and strike beside it. </span>
        {!isComplete(assembly) && "Dashed: still in the tray."}
      </figcaption>
    </figure>
  );
}
