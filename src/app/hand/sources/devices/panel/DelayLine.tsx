import { useEffect, useState } from "react";
import type { DeviceHub } from "../deviceHub";

/** How long the hand takes to the screen, looked at every second. */
export function DelayLine({ hub }: { readonly hub: DeviceHub }) {
  const [summary, setSummary] = useState(hub.delays);
  useEffect(() => {
    const timer = setInterval(() => setSummary(hub.delays), 1000);
    return () => clearInterval(timer);
  }, [hub]);
  if (summary === null) return <p className="text-soft">Hand to screen: turn the dial to measure it.</p>;
  const [middle, most] = [summary.middle, summary.most].map((delay) => Math.round(delay));
  return (
    <p className="text-soft">
      Hand to screen: {middle} ms, 95 of 100 moves within {most} ms.
    </p>
  );
}
