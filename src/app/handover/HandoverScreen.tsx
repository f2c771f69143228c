import { lazy } from "react";
import type { Chance } from "../../statistics/chance";
import "../shell/workplace.css";
import "./handover.css";

const RunView = lazy(async () => ({ default: (await import("./run/RunView")).RunView }));
const ChangeView = lazy(async () => ({ default: (await import("./change/ChangeView")).ChangeView }));
const TroubleView = lazy(async () => ({ default: (await import("./trouble/TroubleView")).TroubleView }));
const HoldbackView = lazy(async () => ({ default: (await import("./holdback/HoldbackView")).HoldbackView }));

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
