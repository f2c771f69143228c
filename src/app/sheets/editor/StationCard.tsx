import type { Station } from "../../../drill/sheet/sheet";
import { stationName } from "../../../drill/sheet/stationName";
import { Button } from "../../parts/controls/Button";
import { stationLine } from "../../results/sheetWords";
import type { EditSession } from "./editSession";
import { StationForm } from "./StationForm";

/** What is done with a station; the list keeps the focus where it belongs. */
export type StationAct = "up" | "down" | "copy" | "remove";

interface StationCardProps {
  readonly session: EditSession;
  readonly station: Station;
  readonly index: number;
  readonly isOpen: boolean;
  readonly isLast: boolean;
  /** Where a dragged station would come to lie beside this one. */
  readonly drop: "before" | "after" | "dragged" | undefined;
  /** What is wrong or doubtful here and belongs to no field. */
  readonly notes: readonly string[];
  readonly onToggle: () => void;
  readonly onAct: (act: StationAct) => void;
}

const ACTS: readonly { readonly act: StationAct; readonly sign: string; readonly label: string }[] = [
  { act: "up", sign: "↑", label: "Move up" },
  { act: "down", sign: "↓", label: "Move down" },
  { act: "copy", sign: "Copy", label: "Copy" },
  { act: "remove", sign: "Remove", label: "Remove" },
];

function StationActs({ name, isFirst, isLast, onAct }: StationActsProps) {
  const isOff = (act: StationAct) => (act === "up" && isFirst) || (act === "down" && isLast);
  return (
    <div className="row flex-none gap-2 phone:w-full phone:justify-end">
      {ACTS.map(({ act, sign, label }) => (
        <Button
          key={act}
          className="px-3 min-w-[36px] phone:min-w-[44px] text-small"
          data-act={act}
          title={label}
          aria-label={`${label}: ${name}`}
          // Not disabled: a station that has come to the end keeps the focus.
          aria-disabled={isOff(act)}
          onClick={() => onAct(act)}
        >
          {sign}
        </Button>
      ))}
    </div>
  );
}

interface StationActsProps {
  readonly name: string;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onAct: (act: StationAct) => void;
}

/** One station of the list: its line, what can be done with it, and its fields when it is open. */
export function StationCard(props: StationCardProps) {
  const { session, station, index, isOpen, isLast, drop, notes, onToggle, onAct } = props;
  const name = stationName(station, index);
  return (
    <li className="sheets-station plate mt-3 px-4 py-3" data-station={session.keyOf(station)} data-drop={drop}>
      <div className="flex items-center gap-3 phone:flex-wrap">
        <span
          className="flex-none w-[34px] leading-[40px] text-title text-center text-soft cursor-grab touch-none select-none"
          data-handle=""
          aria-hidden="true"
          title="Drag to move"
        >
          ⠿
        </span>
        <button
          type="button"
          className="bare flex-1 min-w-0 min-h-[40px] px-2"
          aria-expanded={isOpen}
          data-act="toggle"
          onClick={onToggle}
        >
          <span className="font-semibold">
            <span className="mr-2 font-normal text-soft">{index + 1}</span> {name}
          </span>
          <small className="block">{stationLine(station, "instructor")}</small>
        </button>
        <StationActs name={name} isFirst={index === 0} isLast={isLast} onAct={onAct} />
      </div>
      {notes.map((note) => (
        <p key={note} className="mt-2 mb-1 text-small before:content-['Mind:_'] before:font-semibold">
          {note}
        </p>
      ))}
      {isOpen && (
        <StationForm
          station={station}
          path={`stations[${index}]`}
          onFields={(fields, field) => session.changeStation(index, fields, field)}
        />
      )}
    </li>
  );
}
