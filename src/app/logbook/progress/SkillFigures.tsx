import { useMemo, useState } from "react";
import { type ProgressMeasure, progressPoints } from "../../../progress/stops/progressMeasure";
import { Figure } from "../../pictures/charts/Figure";
import { type FigureModel, isTold } from "../../pictures/charts/figureModel";
import { bestsFigure } from "../../results/figures/bestsFigure";
import { characteristicFigure } from "../../results/figures/characteristicFigure";
import { MEASURE_WORDS, MEASURES } from "../../results/figures/controlFigure";
import { measureFigures, progressFigures, type SkillProgress } from "../../results/figures/progressFigures";
import { ReadinessSettings } from "../../results/ReadinessSettings";
import { FilterChoice } from "../list/FilterChoice";

const MEASURE_CHOICES = MEASURES.map((one) => [one, MEASURE_WORDS[one]] as const);

/** Points from which a measure has a chart. */
const FEWEST_POINTS = 2;

/** What cannot be told yet, in one list: an empty panel for each would push aside what there is. */
function UntoldFigures({ figures }: { readonly figures: readonly FigureModel[] }) {
  if (figures.length === 0) return null;
  return (
    <section className="card col-span-full" aria-labelledby="figures-untold">
      <h2 id="figures-untold">What more attempts will show</h2>
      <ul className="plain stack">
        {figures.map(({ title, sentence }) => (
          <li key={title}>
            <b>{title}.</b> {sentence}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The views of a skill at the dial: what there is to show first, then what is still wanting. */
export function SkillFigures({ progress }: { readonly progress: SkillProgress }) {
  const { attempts } = progress;
  const [measure, setMeasure] = useState<ProgressMeasure>("worst-stop");
  const figures = useMemo(() => progressFigures(progress), [progress]);
  const bests = useMemo(() => bestsFigure(attempts), [attempts]);
  const characteristic = useMemo(() => characteristicFigure(progress.mastery.rule), [progress]);
  const [control, learning] = useMemo(() => measureFigures(attempts, measure), [attempts, measure]);
  // The choice of a measure stays while any of them has a chart.
  const hasMeasure = MEASURES.some((one) => progressPoints(attempts, one).length >= FEWEST_POINTS);
  const all = [...figures, ...(hasMeasure ? [] : [control]), learning];
  return (
    <div className="tiles-[420px] gap-4">
      {figures.filter(isTold).map((figure) => (
        <Figure key={figure.title} figure={figure} />
      ))}
      {hasMeasure && (
        <Figure figure={control}>
          <FilterChoice
            label="What is measured, here and in the learning curve"
            value={measure}
            choices={MEASURE_CHOICES}
            onChoice={setMeasure}
          />
        </Figure>
      )}
      {hasMeasure && isTold(learning) && <Figure figure={learning} />}
      <Figure figure={bests} />
      <Figure figure={characteristic}>
        <ReadinessSettings />
      </Figure>
      <UntoldFigures figures={all.filter((one) => !isTold(one))} />
    </div>
  );
}
