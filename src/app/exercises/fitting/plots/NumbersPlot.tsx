import type { Fit } from "../../../../fitting/fit";
import { numberReads, numberReadsAfterZero } from "../../../../fitting/teaching/numberError";
import { signedText } from "../../../parts/signedText";
import { RoundPlot } from "./RoundPlot";

/** What the opening index reads too much at each number of the dial, as fitted and once zero is set. */
export function NumbersPlot({ fit, perTurn }: { readonly fit: Fit; readonly perTurn: number }) {
  const afterZero = (number: number) => numberReadsAfterZero(fit, number, perTurn);
  const quarters = [0, 0.25, 0.5, 0.75].map((part) => part * perTurn);
  return (
    <RoundPlot
      label="What the opening index reads too much at each number"
      perTurn={perTurn}
      curves={[
        { errorAt: (number) => numberReads(fit, number, perTurn), isDashed: false },
        { errorAt: afterZero, isDashed: true },
      ]}
      dots={quarters}
      ends="0"
      middle={`${perTurn / 2}`}
    >
      Graduations that the opening index reads too much at each number of the dial: solid as fitted, dashed once zero is
      set there. Left after zero:{" "}
      {quarters.map((number) => `at ${number} ${signedText(afterZero(number), 2)}`).join(", ")}.
    </RoundPlot>
  );
}
