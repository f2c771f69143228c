import type { ZeroingTry } from "../../drill/marking/tryResult";
import { StackedTable } from "../parts/TextTable";
import { readingRows } from "./readingRows";

interface ReadingsReviewProps {
  readonly one: ZeroingTry;
  /** Place of the try in the sitting, from 1. */
  readonly place: number;
}

/** Every reading of a try at setting zero: where it lay, and whether it counted. */
export function ReadingsReview({ one, place }: ReadingsReviewProps) {
  return (
    <section aria-label={`Stops of try ${place}`}>
      <h3 className="mt-4 mb-3">
        Stops of try {place} <small>off zero in graduations; plus is left</small>
      </h3>
      <StackedTable head={["Stop", "Turning", "Off zero", "Counted"]} rows={readingRows(one.readings ?? [])} />
    </section>
  );
}
