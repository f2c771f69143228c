import type { Assembly } from "../../../../fitting/assembly";
import type { LockToFit } from "../../../../fitting/fittedLock";
import { faceOf, readingError } from "../../../../fitting/offCenter";
import { signedText } from "../../../parts/signedText";
import { RoundPlot } from "./RoundPlot";

/** What marks all round the ring read too much. */
export function RingPlot({ assembly: { ring }, lock }: { readonly assembly: Assembly; readonly lock: LockToFit }) {
  const { perTurn, sizes, changingIndex } = lock;
  const face = faceOf(perTurn, sizes.markRadius_mm, ring?.offset ?? null);
  const errorAt = (place: number) => readingError(face, place, 0) - (ring?.turned ?? 0);
  const indexes = [
    { label: "opening index", place: 0 },
    ...(changingIndex === null ? [] : [{ label: "changing index", place: (perTurn - changingIndex) % perTurn }]),
  ];
  return (
    <RoundPlot
      label="What marks round the ring read too much"
      perTurn={perTurn}
      curves={[{ errorAt, isDashed: false }]}
      dots={indexes.map(({ place }) => place)}
      ends="top of the ring"
      middle="bottom"
    >
      Graduations that each mark of the ring reads too much, clockwise from the top. Dots:{" "}
      {indexes.map(({ label, place }) => `${label} ${signedText(errorAt(place), 2)}`).join(", ")}.
    </RoundPlot>
  );
}
