import { doorJoints, type Fit } from "../../../fitting/fit";
import type { FittingSizes } from "../../../fitting/fittingSizes";
import { afterUse, SPANS, type Span, takesOf } from "../../../fitting/teaching/afterUse";
import type { Profile } from "../../../lock/profile";
import { fitQuery } from "../../hand/dial/dialAddress";
import { StackedTable } from "../../parts/TextTable";

const SPAN_WORDS: Readonly<Record<Span, string>> = {
  week: "A week",
  month: "A month",
  quarter: "Three months",
  year: "A year",
};

const HEAD = ["In use for", "Turns", "Lost motion", "The numbers as written"];
const graduations = (size: number) => `${size.toFixed(2)} graduations`;

interface AfterUseProps {
  readonly fit: Fit;
  readonly sizes: FittingSizes;
  readonly profile: Profile;
}

/** What use makes of a key that works itself a wider seat: how its lost motion grows, and when the numbers stop opening. */
export function AfterUse({ fit, sizes, profile }: AfterUseProps) {
  if (fit.playGrows === 0) return null;
  const used = SPANS.map((span) => ({ span, ...afterUse(fit, sizes, profile, span) }));
  const first = used.find(({ opens }) => !opens) ?? used.at(-1);
  const rows = used.map(({ span, turns, play, opens }) => [
    SPAN_WORDS[span],
    turns.toLocaleString("en-US"),
    graduations(play),
    opens ? `open, if your stops are within ${graduations(takesOf(profile) - play)}` : "do not open",
  ]);
  const joints = doorJoints(fit, profile.graduations);
  return (
    <section className="stack" aria-label="After use">
      <h3>What use will do</h3>
      <p>
        The loose key wears its seat with every turn. A number that you turn to the right is off by the whole lost
        motion. This lock opens with a number up to {takesOf(profile)} graduations off. The table is for ten openings a
        day (a training value).
      </p>
      <StackedTable head={HEAD} rows={rows} />
      {profile.kind === "wheel-pack" && first !== undefined && (
        <p>
          <a
            href={`#/bench?profile=${profile.id}${fitQuery({ ...joints, lostMotion: Number(first.play.toFixed(2)) })}`}
          >
            Dial this lock as it is after {SPAN_WORDS[first.span].toLowerCase()}
          </a>
        </p>
      )}
    </section>
  );
}
