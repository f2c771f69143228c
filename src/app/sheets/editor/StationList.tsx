import { useEffect, useRef, useState } from "react";
import type { Station } from "../../../drill/sheet/sheet";
import { STATION_KINDS } from "../../../drill/sheet/stationKinds";
import { type Problem, pathText } from "../../../wording/problem";
import { Button } from "../../parts/controls/Button";
import type { EditSession } from "./editSession";
import { fieldSentence } from "./placedProblems";
import { type StationAct, StationCard } from "./StationCard";
import { useStationDrag } from "./useStationDrag";

/** A button to be focused once it is drawn: of which station, by its key, and which. */
interface FocusWish {
  readonly station: string;
  readonly act: StationAct | "toggle";
}

const MOST_STATIONS = 40;

const ADD: Readonly<Record<Station["kind"], string>> = {
  dialing: "Add dialing",
  zeroing: "Add zeroing",
  change: "Add a change",
  trouble: "Add a hidden defect",
  handover: "Add a handover",
  fitting: "Add a dial to fit",
  service: "Add a service visit",
  inspection: "Add a fit to judge",
};

interface StationListProps {
  readonly session: EditSession;
  /** Doubts and problems of stations as a whole. */
  readonly notes: readonly Problem[];
}

const dropSide = (drag: { from: number; to: number } | null, index: number) => {
  if (drag === null) return undefined;
  if (index === drag.from) return "dragged";
  if (index !== drag.to) return undefined;
  return drag.to < drag.from ? "before" : "after";
};

/** The stations: opened one by one, moved by hand or by button, copied, removed, added. */
export function StationList({ session, notes }: StationListProps) {
  const { stations } = session.sheet;
  const list = useRef<HTMLOListElement>(null);
  const adder = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const wish = useRef<FocusWish | null>(null);
  const drag = useStationDrag(list, (from, to) => session.move(from, to));

  useEffect(() => {
    const { current } = wish;
    if (current === null) return;
    wish.current = null;
    const item = list.current?.querySelector(`[data-station="${CSS.escape(current.station)}"]`);
    const button = item?.querySelector<HTMLElement>(`[data-act="${current.act}"]`);
    (button ?? adder.current)?.focus();
  });

  const keyAt = (index: number) => {
    const station = stations[index];
    return station === undefined ? "" : session.keyOf(station);
  };
  const toggle = (key: string) =>
    setOpen((before) => new Set([...before].filter((one) => one !== key).concat(before.has(key) ? [] : [key])));
  const reveal = (key: string | null) => {
    if (key === null) return;
    setOpen((before) => new Set([...before, key]));
    wish.current = { station: key, act: "toggle" };
  };
  const remove = (index: number) => {
    wish.current = { station: keyAt(index + 1) || keyAt(index - 1), act: "remove" };
    session.remove(index);
  };
  const move = (index: number, by: number, act: StationAct) => {
    wish.current = { station: keyAt(index), act };
    session.move(index, index + by);
  };
  const acts: Readonly<Record<StationAct, (index: number) => void>> = {
    up: (index) => move(index, -1, "up"),
    down: (index) => move(index, 1, "down"),
    copy: (index) => reveal(session.copy(index)),
    remove,
  };

  return (
    <section className="mt-6" aria-labelledby="sheets-stations">
      <h2 id="sheets-stations">Stations</h2>
      <ol className="plain col-span-full" ref={list}>
        {stations.map((station, index) => (
          <StationCard
            key={keyAt(index)}
            {...{ session, station, index }}
            isOpen={open.has(keyAt(index))}
            isLast={index === stations.length - 1}
            drop={dropSide(drag, index)}
            notes={notes.filter(({ path }) => pathText(path) === `stations[${index}]`).map(fieldSentence)}
            onToggle={() => toggle(keyAt(index))}
            onAct={(act) => acts[act](index)}
          />
        ))}
      </ol>
      {stations.length === 0 && <p className="problem">A sheet needs at least one station.</p>}
      <div className="row mt-4">
        {STATION_KINDS.map((kind, k) => (
          <Button
            key={kind}
            ref={k === 0 ? adder : null}
            disabled={stations.length >= MOST_STATIONS}
            onClick={() => reveal(session.add(kind))}
          >
            {ADD[kind]}
          </Button>
        ))}
      </div>
    </section>
  );
}
