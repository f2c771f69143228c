import { useSelector } from "@xstate/react";
import type { Graduations } from "../../../lock/dial";
import { type IndexErrorEstimate, indexErrorEstimate } from "../../../zeroing/ringClamp";
import { zeroLessons } from "../../../zeroing/zeroLesson";
import { exerciseResult } from "../../../zeroing/zeroResult";
import { lostMotionWords, verdictWords } from "../../../zeroing/zeroWords";
import { Button } from "../../parts/controls/Button";
import { memoryOf } from "../../parts/page/ofChart";
import { TextTable } from "../../parts/TextTable";
import { ReadingsPlot } from "./ReadingsPlot";
import type { ZeroingSession } from "./session/zeroingSession";

/** From this error of the index on, its consequence is told, graduations. */
const ASKEW: Graduations = 0.3;

const VERDICT_HEADLINE = {
  accept: "Both sides are shown to be good.",
  reject: "A side is shown to be off: set it again.",
  "not shown yet": "Set, but not shown to be good yet.",
} as const;

/** Two decimals with a sign: a zero is set within a hair. */
const fine = (value: number) => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(2)}`;

/** Where the index stands, as the readings show it and in truth; graduations, left positive. */
function indexWords(truth: Graduations, { estimate, ci95 }: IndexErrorEstimate): string {
  const seen = `Index: ${fine(estimate)} graduations off its true place, 95 % interval ${fine(ci95.low)} to ${fine(ci95.high)}; its true error is ${fine(truth)}.`;
  return Math.abs(truth) > ASKEW
    ? `${seen} The zero compensates for this. If someone straightens the ring later, every stop is off by that much.`
    : seen;
}

/** What both series came to: a sentence, a picture, a table, and what to do better. */
export function ZeroResultView({ session, now }: { readonly session: ZeroingSession; readonly now: number }) {
  const { rules } = session.setup;
  const { accepted, reasons } = useSelector(session.chart, memoryOf);
  const result = exerciseResult(accepted, rules);
  const verdicts = rules.order.map((side) => result[side].verdict);
  const worst = (["reject", "not shown yet", "accept"] as const).find((one) => verdicts.includes(one)) ?? "accept";
  const deviations = {
    right: accepted.right.map(({ deviation }) => deviation),
    left: accepted.left.map(({ deviation }) => deviation),
  };
  const index = indexErrorEstimate(accepted.left.map(({ cam, deviation }) => cam - deviation));
  const { time_ms, turns } = session.effort(now);
  return (
    <>
      <p className="zeroing-headline text-title">{VERDICT_HEADLINE[worst]}</p>
      {worst === "reject" && <Button onClick={() => session.again()}>Start again</Button>}
      <ReadingsPlot
        order={rules.order}
        readings={deviations}
        results={result}
        lostMotion={result.lostMotion}
        truth={session.lock.condition.lostMotion}
        tolerance={rules.tolerance}
      />
      <TextTable
        className="zeroing-table mt-3"
        head={["turning", "stops", "mean", "sd", "spread", "95 % interval of the mean"]}
        rows={rules.order.map((side) => {
          const { n, mean, sd, spread, ci95 } = result[side];
          const interval = `${fine(ci95.low)} to ${fine(ci95.high)}`;
          return [side, String(n), fine(mean), sd.toFixed(2), spread.toFixed(2), interval];
        })}
      />
      <ul className="mt-3 pl-5">
        {rules.order.map((side) => (
          <li key={side}>
            {verdictWords(side, result[side], rules)}{" "}
            {result[side].verdict === "not shown yet" && accepted[side].length < rules.most && (
              <Button onClick={() => session.reopen(side)}>One more stop {side}</Button>
            )}
          </li>
        ))}
        <li>{lostMotionWords(result.lostMotion, session.lock.condition.lostMotion)}</li>
        <li>{indexWords(session.lock.indexError, index)}</li>
        {zeroLessons({ sides: result, reasons }, rules).map((lesson) => (
          <li key={lesson}>
            <b>{lesson}</b>
          </li>
        ))}
      </ul>
      <p className="row mt-4">
        <Button onClick={() => session.loosenRing()}>Loosen the ring</Button>
      </p>
      <p className="mt-3 text-small text-soft">
        {(time_ms / 1000).toFixed(0)} seconds, {turns.toFixed(1)} turns. A practice result is not a certificate.
      </p>
    </>
  );
}
