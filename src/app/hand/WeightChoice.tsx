import { DIAL_WEIGHTS, type DialWeight } from "../../dialing/hand/dialFeel";
import { Select } from "../parts/controls/Select";
import { weightOf, withWeight } from "./dial/dialAddress";

/** How a dial of each weight turns. */
export const WEIGHT_LABELS: Readonly<Record<DialWeight, string>> = {
  usual: "Usual: it follows your hand exactly",
  heavy: "Heavy: it sticks, then follows behind your hand",
  light: "Light: it keeps turning a little after your hand stops",
};

/** How the dial of an exercise turns. It is a part of the address, so another choice begins the exercise again. */
export function WeightChoice({ query }: { readonly query: URLSearchParams }) {
  return (
    <div className="panel print:hidden">
      <label className="flex items-center gap-3">
        Dial
        <Select
          className="w-full min-w-0 max-w-[420px]"
          value={weightOf(query)}
          choices={DIAL_WEIGHTS.map((weight) => [weight, WEIGHT_LABELS[weight]])}
          onChoice={(weight) => {
            location.hash = withWeight(location.hash, weight);
          }}
        />
      </label>
    </div>
  );
}
