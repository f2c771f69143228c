import type { SittingRecord } from "../../../records/records";
import type { Logbook } from "../../../store/logbook";
import { FAILS_CHECK } from "../../parts/files/checkWords";
import { Lines } from "../../parts/Lines";
import { RecordNote } from "../notes/RecordNote";
import { hasResult, sittingRowOf } from "./sittingRows";

/** What can be done with a sitting now. */
function Ways({ sitting }: { readonly sitting: SittingRecord }) {
  if (sitting.state === "running") {
    return (
      <p>
        It has not ended. <a href="#/sittings">Go on with it</a>: its sheet decides what happens after a reload.
      </p>
    );
  }
  if (!hasResult(sitting)) {
    return <p>It was under way on another device when its logbook was saved. It has no result here.</p>;
  }
  return (
    <>
      <div className="row mt-4">
        <a className="button" href={`#/sittings?record=${sitting.id}`}>
          Open the result
        </a>
      </div>
      <p className="text-soft mt-3">
        Its marks, every try again, the print, the record as a file, and a check of its hash.
      </p>
    </>
  );
}

interface SittingPaneProps {
  readonly logbook: Logbook;
  readonly sitting: SittingRecord | null;
  readonly onChanged: (sitting: SittingRecord) => void;
}

/** One sitting: how it stands, the way to its result, and what is noted of it. */
export function SittingPane({ logbook, sitting, onChanged }: SittingPaneProps) {
  if (sitting === null) return <p className="py-5 text-soft">Choose a sitting to look at it.</p>;
  const row = sittingRowOf(sitting);
  return (
    <>
      <section aria-label="Sitting">
        <h2>{row.title}</h2>
        <p>
          {row.standing}. {row.tries}. {row.day} {row.clock}.
        </p>
        {row.sentences.length > 0 && (
          <div className={row.isWrong ? "notice mt-4" : "notice mt-4 border-line"}>
            <p>{row.isWrong ? FAILS_CHECK : "Not all of this record is checked here."}</p>
            <Lines of={row.sentences} />
          </div>
        )}
        <Ways sitting={sitting} />
      </section>
      {sitting.state !== "running" && (
        <RecordNote logbook={logbook} kind="sittings" record={sitting} onChanged={onChanged} />
      )}
    </>
  );
}
