import type { ComponentType } from "react";
import { fetchedLater } from "../../parts/page/fetchedLater";
import type { ClassView } from "../address/classroomAddress";
import type { ClassProps } from "../asking/classProps";
import { RosterPanel } from "../roster/RosterPanel";
import { BenchesPanel } from "./BenchesPanel";
import { CodePanel } from "./CodePanel";

/** A view of a class: the words on its tab, and what is below it. */
interface ClassViewPart {
  readonly label: string;
  readonly Panel: ComponentType<ClassProps>;
}

/** A view that comes when it is opened. */
const later = (fetchPanel: () => Promise<ComponentType<ClassProps>>) => fetchedLater(fetchPanel, null);

/** Every view of a class. */
export const CLASS_VIEW_PARTS: Readonly<Record<ClassView, ClassViewPart>> = {
  join: { label: "Join", Panel: CodePanel },
  roster: { label: "Roster and cards", Panel: RosterPanel },
  assignments: {
    label: "Assignments",
    Panel: later(async () => (await import("../assignments/AssignmentsPanel")).AssignmentsPanel),
  },
  board: { label: "Live board", Panel: later(async () => (await import("../board/BoardPanel")).BoardPanel) },
  results: { label: "Results", Panel: later(async () => (await import("../results/ResultsPanel")).ResultsPanel) },
  desk: { label: "Class desk", Panel: later(async () => (await import("../desk/DeskPanel")).DeskPanel) },
  benches: { label: "Benches", Panel: BenchesPanel },
};
