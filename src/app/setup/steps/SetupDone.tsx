import type { SetupRecord } from "../../../realdial/setup/setupRecord";
import { stopsAsked } from "../../../realdial/setup/stopAsked";
import { COARSE_FROM } from "../../../realdial/sources/sourceDescription";
import { Button } from "../../parts/controls/Button";
import { measuredRows, stopText } from "../session/setupWords";

interface SetupDoneProps {
  readonly record: SetupRecord;
  readonly back: string;
  readonly onAgain: () => void;
}

/** What the setup found, and the way to where the dial is wanted. */
export function SetupDone({ record, back, onAgain }: SetupDoneProps) {
  const stops = stopsAsked(record.perTurn);
  return (
    <>
      <dl className="facts">
        {measuredRows(record).map(([name, value]) => (
          <div key={name} className="contents">
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
        <dt>Stops</dt>
        <dd>
          {record.errors.map((error, k) => (
            <span key={stops[k]?.number} className="block">
              {stopText(stops[k]?.number ?? 0, error, record.resolution)}
            </span>
          ))}
        </dd>
      </dl>
      {record.resolution >= COARSE_FROM && (
        <p>This source is coarse. Use it for turns and their order. Its stops are not marked.</p>
      )}
      <p className="text-soft">
        This is remembered in this browser. The dial stays connected until you disconnect it (on the bench, under More),
        or close or reload the app.
      </p>
      <div className="row">
        <a className="button primary" href={back}>
          {back.startsWith("#/bench") ? "To the bench" : "Back to where you were"}
        </a>
        <Button onClick={onAgain}>Check again</Button>
      </div>
    </>
  );
}
