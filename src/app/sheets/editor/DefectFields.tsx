import type { TroubleStation } from "../../../drill/sheet/sheet";
import { kindsFor } from "../../../handover/trouble/drawTrouble";
import { TROUBLE_KINDS, type TroubleKind } from "../../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../../handover/trouble/troubleGuide";
import { Button } from "../../parts/controls/Button";
import { knownProfile } from "../../results/sheetWords";
import { CheckField, useProblem } from "./fields";
import type { StationEdit } from "./stationEdit";

const isKind = (id: string): id is TroubleKind => TROUBLE_KINDS.some((kind) => kind === id);

/** The pool with a kind more or less, in the order of the kinds; undefined where none is left. */
const withKind = (pool: readonly string[], kind: TroubleKind, isIn: boolean): readonly string[] | undefined => {
  const others = pool.filter((id) => id !== kind);
  const next = isIn ? TROUBLE_KINDS.filter((one) => one === kind || others.includes(one)) : others;
  return next.length === 0 ? undefined : next;
};

/** What a sheet of elsewhere names and this version does not know: shown, and removed on a press. */
function UnknownDefects({ station, onFields }: Omit<StationEdit<TroubleStation>, "path">) {
  const { pool = [] } = station;
  const unknown = pool.filter((id) => !isKind(id));
  if (unknown.length === 0) return null;
  const known = pool.filter(isKind);
  return (
    <p>
      Not known here: {unknown.join(", ")}.{" "}
      <Button onClick={() => onFields({ pool: known.length === 0 ? undefined : known }, "pool")}>Remove</Button>
    </p>
  );
}

/** Which defects a trouble station draws from: those that its lock can have, by their names. */
export function DefectFields({ station, path, onFields }: StationEdit<TroubleStation>) {
  const says = useProblem(`${path}.pool`);
  const profile = knownProfile(station);
  const pool = station.pool ?? [];
  const kinds = TROUBLE_KINDS.filter(
    (kind) => pool.includes(kind) || profile === null || kindsFor(profile).includes(kind),
  );
  return (
    <fieldset className="sheets-part tiles-[210px] phone:tiles-[140px] col-span-full items-start phone:items-end gap-x-5 gap-y-4 mt-4 pt-3 ruled">
      <legend>Defects to draw from (none checked: all of them)</legend>
      {kinds.map((kind) => (
        <CheckField
          key={kind}
          label={`${TROUBLE_GUIDE[kind].title}: ${TROUBLE_GUIDE[kind].line}`}
          value={pool.includes(kind)}
          onCheck={(isIn) => onFields({ pool: withKind(pool, kind, isIn) }, "pool")}
        />
      ))}
      <UnknownDefects {...{ station, onFields }} />
      {says !== undefined && <p className="problem">{says}</p>}
    </fieldset>
  );
}
