import { useMemo } from "react";
import { dialedInside, type InsideOfTry, turnsUntilDrop } from "../../../../handover/trouble/inside";
import type { TryObservation } from "../../../../handover/trouble/observation";
import type { LockCard, TroubleTask } from "../../../../handover/trouble/trouble";
import { guideSource, TROUBLE_GUIDE } from "../../../../handover/trouble/troubleGuide";
import { countText } from "../../../../wording/amountWords";
import { focusDial } from "../../../hand/dial/focusDial";
import { Button } from "../../../parts/controls/Button";
import { takeFocus } from "../../../parts/page/takeFocus";
import { signedText } from "../../../parts/signedText";
import { TextTable } from "../../../parts/TextTable";
import { Cutaway } from "../../../pictures/cutaway/Cutaway";
import { seenRow } from "./observationRows";
import type { TroubleSession } from "./troubleSession";

const errorText = ({ errors, limits }: InsideOfTry) =>
  errors.map((error, k) => `${signedText(error)}${Math.abs(error) > (limits[k] ?? 0) ? " ✕" : ""}`).join(" · ");

/** Begins an exercise, and gives the keys back to the dial. */
const begin = (exercise: () => void) => () => {
  exercise();
  focusDial();
};

interface TriesInsideProps {
  readonly card: LockCard;
  readonly tries: readonly TryObservation[];
  readonly insides: readonly InsideOfTry[];
}

/** What every try came to inside the lock. */
function TriesInside({ card, tries, insides }: TriesInsideProps) {
  const isPack = card.profile.kind === "wheel-pack";
  const what = isPack ? "How far each gate was off the fence" : "How far off the lock counted each stop";
  return (
    <TextTable
      className="mt-3"
      caption={`${what}, in graduations; ✕ is more than it takes.`}
      head={["your try", isPack ? "the gates" : "the lock counted", "so"]}
      rows={tries.map((one, k) => {
        const { done, showed } = seenRow(one, k, card);
        const inside = insides[k];
        return [done, inside === undefined ? "" : errorText(inside), showed];
      })}
    />
  );
}

const dropText = (turned: number | null) =>
  turned === null ? "the nose never drops" : `the nose drops after ${turned.toFixed(0)} graduations of the draw`;

/** What a last number in its zone does on this very lock, tried out. */
function ZoneTried({ task }: { readonly task: TroubleTask }) {
  const tried = useMemo(() => [-1, 0, 1].map((off) => ({ off, turned: turnsUntilDrop(task, off) })), [task]);
  const [first] = tried;
  const isHarmless = tried.every(({ turned }) => turned !== null && Math.abs(turned - (first?.turned ?? 0)) < 3);
  return (
    <>
      <p>
        {isHarmless
          ? "A rule of the handbook; this lock still opens, wherever in its tolerance the stop falls."
          : "On this lock it makes a difference where in its tolerance the stop falls."}
      </p>
      <ul className="mt-2">
        {tried.map(({ off, turned }) => (
          <li key={off}>
            Last stop {off === 0 ? "on the number" : `${signedText(off)} off`}: {dropText(turned)}.
          </li>
        ))}
      </ul>
    </>
  );
}

/** What it was, shown from the mechanics; how to tell it, and what one does about it. */
export function Debrief({ session }: { readonly session: TroubleSession }) {
  const { task, mark, result, bench } = session;
  const inside = useMemo(() => dialedInside(task), [task]);
  if (mark === null || result === null) return null;
  const guide = TROUBLE_GUIDE[task.trouble.kind];
  const tries = bench.log.filter((seen) => seen.kind === "try");
  return (
    <section className="panel stack" aria-label="What it was">
      <h2 ref={takeFocus} tabIndex={-1}>
        What it was
      </h2>
      <p className="text-title" role="status">
        {mark.headline}
      </p>
      <p>
        {result.points} of 2 points, {countText(result.tries, "try", "tries")},{" "}
        {countText(result.measurements, "measurement", "measurements")}.
      </p>
      <p>{guide.signs}</p>
      {task.trouble.kind === "last-excluded" && <ZoneTried task={task} />}
      <p className="text-soft">Dialed exactly as written by the index, and not yet drawn, it looks like this inside:</p>
      <Cutaway attempt={inside} version={0} />
      {tries.length > 0 && <TriesInside card={task.card} tries={tries} insides={bench.insides} />}
      <h3 className="mt-3 -mb-3">How to recognize it next time</h3>
      <p>{guide.tell}</p>
      <h3 className="mt-3 -mb-3">What to do about it</h3>
      <p>{guide.practice}</p>
      <p className="text-soft">The maker's written instructions decide. Source: {guideSource(task.trouble.kind)}.</p>
      <p className="row mt-3">
        <Button onClick={begin(() => session.again())}>Same again</Button>
        <Button className="primary" onClick={begin(() => session.another())}>
          Another
        </Button>
      </p>
    </section>
  );
}
