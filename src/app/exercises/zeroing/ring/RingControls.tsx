import type { Graduations } from "../../../../lock/dial";
import { RING_TRAVEL } from "../../../../zeroing/ringClamp";
import { focusDial } from "../../../hand/dial/focusDial";
import { Button } from "../../../parts/controls/Button";
import { TurnGlyph } from "../../../parts/TurnGlyph";
import type { ZeroingSession } from "../session/zeroingSession";

/** Where the index is with respect to the line on the case, to a tenth. */
export function indexPlace(error: Graduations): string {
  const size = Math.abs(error).toFixed(1);
  return size === "0.0"
    ? "the index is on the line"
    : `the index is ${size} graduations ${error > 0 ? "left" : "right"} of the line`;
}

/** Turns the loose ring on the case, beside the index: a slider, nudges, and the clamp. */
export function RingControls({ session }: { readonly session: ZeroingSession }) {
  const { lock } = session;
  return (
    <div className="zeroing-ring row w-full max-w-[560px] phone:justify-center">
      <label htmlFor="ring-turn">Ring</label>
      <input
        id="ring-turn"
        type="range"
        min={-RING_TRAVEL}
        max={RING_TRAVEL}
        step={0.05}
        value={-lock.ringTurn}
        aria-valuetext={`turned ${Math.abs(lock.ringTurn).toFixed(2)} ${lock.ringTurn < 0 ? "right" : "left"}; ${indexPlace(lock.indexError)}`}
        onChange={(event) => session.turnRing(-Number(event.currentTarget.value) - lock.ringTurn)}
      />
      <Button onClick={() => session.turnRing(0.05)} aria-label="Nudge the ring left">
        <TurnGlyph turn="left" /> nudge
      </Button>
      <Button onClick={() => session.turnRing(-0.05)} aria-label="Nudge the ring right">
        nudge <TurnGlyph turn="right" />
      </Button>
      <Button
        className="primary"
        onClick={() => {
          session.clampRing();
          focusDial();
        }}
      >
        Clamp the ring
      </Button>
    </div>
  );
}
