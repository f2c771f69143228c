import { type ReactNode, useId, useRef } from "react";
import { useSize } from "../../parts/page/useSize";
import { TextTable } from "../../parts/TextTable";
import type { FigureModel } from "./figureModel";
import { HeatChart } from "./HeatChart";
import { IntervalChart } from "./IntervalChart";
import { RunChart } from "./RunChart";
import "./charts.css";

function Chart({ model, width }: { readonly model: NonNullable<FigureModel["chart"]>; readonly width: number }) {
  if (model.kind === "intervals") return <IntervalChart model={model} width={width} />;
  if (model.kind === "run") return <RunChart model={model} width={width} />;
  return <HeatChart model={model} width={width} />;
}

/** Room before it is measured, pixels. */
const UNMEASURED = 440;
/** Narrower than this no chart can be drawn; a page that is still hidden measures nothing. */
const NARROWEST = 240;

/** A view of progress: a sentence, a picture, the table behind it, and the method. */
export function Figure({ figure, children }: { readonly figure: FigureModel; readonly children?: ReactNode }) {
  const { title, sentence, chart, table, note } = figure;
  const id = useId();
  const frame = useRef<HTMLDivElement>(null);
  const width = Math.max(NARROWEST, useSize(frame)?.width ?? UNMEASURED);
  return (
    <section className="card" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
      <p className="figure-sentence">{sentence}</p>
      <div ref={frame} className="min-w-0 overflow-hidden">
        {chart !== null && <Chart model={chart} width={width} />}
      </div>
      {table !== null && chart === null && <TextTable {...table} />}
      {table !== null && chart !== null && (
        <details>
          <summary>As a table</summary>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
          <section className="max-h-[260px] overflow-auto" aria-label={`${title}, as a table`} tabIndex={0}>
            <TextTable {...table} />
          </section>
        </details>
      )}
      {note !== undefined && (
        <details className="figure-note">
          <summary>How this is worked out</summary>
          <p>{note}</p>
        </details>
      )}
    </section>
  );
}
