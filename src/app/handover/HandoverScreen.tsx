import type { Chance } from "../../statistics/chance";
import { fetchedLater } from "../shell/fetchedLater";
import "../shell/workplace.css";
import "./handover.css";

const RunView = fetchedLater(async () => (await import("./run/RunView")).RunView, null);
const ChangeView = fetchedLater(async () => (await import("./change/ChangeView")).ChangeView, null);
const TroubleView = fetchedLater(async () => (await import("./trouble/TroubleView")).TroubleView, null);
const HoldbackView = fetchedLater(async () => (await import("./holdback/HoldbackView")).HoldbackView, null);

const VIEWS = [
  { view: "run", label: "Handover run", View: RunView },
  { view: "change", label: "Change the combination", View: ChangeView },
  { view: "trouble", label: "Trouble bench", View: TroubleView },
  { view: "holdback", label: "Holdback", View: HoldbackView },
] as const;

/** What each part of the handover is given. */
export interface HandoverViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
  readonly hasSound: boolean;
}

/** The rest of the job, from a fresh lock to a signed-off door, in four parts. */
export function HandoverScreen(props: HandoverViewProps) {
  const asked = props.query.get("view");
  const { view, View } = VIEWS.find((one) => one.view === asked) ?? VIEWS[0];
  return (
    <main className="handover">
      <h1 className="visually-hidden">Handover</h1>
      <nav className="handover-views" aria-label="Parts of the handover">
        {VIEWS.map((one) => (
          <a key={one.view} href={`#/handover?view=${one.view}`} aria-current={one.view === view ? "page" : undefined}>
            {one.label}
          </a>
        ))}
      </nav>
      <View {...props} />
    </main>
  );
}
