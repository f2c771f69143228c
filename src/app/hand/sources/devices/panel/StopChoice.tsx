import { useEffect } from "react";
import { Select } from "../../../../parts/controls/Select";
import type { DeviceHub } from "../deviceHub";
import type { StopWay } from "../stopTaking";

const WAY_WORDS: Readonly<Record<StopWay, string>> = {
  key: "The space bar, wherever the focus is",
  rest: "A rest of 1 s within the window",
  button: "The button of the encoder",
};

/** What records a stop of the dial in the hand, where stops are recorded; and how such a stop is judged. */
export function StopChoice({ hub }: { readonly hub: DeviceHub }) {
  const { stops } = hub.watch;
  useEffect(() => stops.listen(), [stops]);
  const { act } = stops;
  if (act?.atRest === undefined) return null;
  return (
    <>
      <label className="row gap-x-2 text-small">
        What records a stop
        <Select
          value={stops.way}
          choices={stops.ways.map((one) => [one, WAY_WORDS[one]] as const)}
          onChoice={(way) => hub.watch.chooseStop(way)}
        />
      </label>
      <p className="w-full text-center text-small text-soft">{act.atRest.says}</p>
    </>
  );
}
