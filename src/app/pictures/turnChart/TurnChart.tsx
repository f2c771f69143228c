import { useEffect, useRef } from "react";
import type { Milliseconds } from "../../../lock/dial";
import { wantsLessMotion } from "../../parts/page/lessMotion";
import { useSize } from "../../parts/page/useSize";
import { TextTable } from "../../parts/TextTable";
import { WordLink } from "../../words/WordLink";
import { WordsHere } from "../../words/WordsHere";
import { ChartPlot } from "./ChartPlot";
import { positionText } from "./chartWords";
import { Readout } from "./Readout";
import { runTable } from "./runTable";
import { Transport } from "./Transport";
import { type ChartInput, useChart } from "./useChart";
import "./turnChart.css";

interface Props extends ChartInput {
  readonly isPlaying: boolean;
  onPlay(): void;
  onPause(): void;
  onScrub(time_ms: Milliseconds): void;
}

/** Room before it is measured, pixels. */
const UNMEASURED = { width: 470, height: 150 };

/** The attempt unrolled: reading across, turns down. It replays a recording; whoever holds it moves the time. */
export function TurnChart(props: Props) {
  const { attempt, recording, ghost, hasFigures = true } = props;
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const { model, told, isSpoken, dial, plot } = useChart(props, size ?? UNMEASURED, props.onScrub);
  const chart = useRef<HTMLElement>(null);
  const isReplay = props.playhead_ms !== null;
  // A replay that starts below the fold would play unseen.
  useEffect(() => {
    if (isReplay)
      chart.current?.scrollIntoView({ block: "nearest", behavior: wantsLessMotion() ? "instant" : "smooth" });
  }, [isReplay]);
  const isEmpty = attempt.reader.runs.length === 0;
  return (
    <section ref={chart} className="turn-chart" aria-label="Turn chart">
      <div className="spread">
        <h2>
          Turn chart <small>dial reading across, turns down</small>
        </h2>
        <WordsHere>
          <WordLink word="arrival">arrival</WordLink>
          <WordLink word="spin-off">spin off</WordLink>
        </WordsHere>
      </div>
      <div className="turn-chart-frame" ref={frame}>
        {size !== null && <ChartPlot {...plot} />}
        {isEmpty && (
          <p className="absolute inset-[45%_22px_auto_54px] text-small text-soft text-center pointer-events-none">
            Turn the dial. Its path is drawn here.
          </p>
        )}
      </div>
      <Readout
        told={told}
        isSpoken={isSpoken}
        hasGhost={ghost !== null}
        isMirrored={attempt.profile.numbersIncrease === "right"}
      />
      {recording !== null && <Transport {...props} recording={recording} reading={positionText(dial, attempt)} />}
      {/* For those who hear it. A table is as wide as its words, hidden or not: what is around it clips it. */}
      <div className="visually-hidden">
        <TextTable {...runTable(attempt, model, { isOver: recording !== null, hasFigures })} />
      </div>
    </section>
  );
}
