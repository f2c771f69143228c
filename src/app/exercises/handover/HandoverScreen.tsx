import { LinkRow } from "../../parts/LinkRow";
import { fetchedLater } from "../../parts/page/fetchedLater";
import { WordLink } from "../../words/WordLink";
import { WordsHere } from "../../words/WordsHere";
import type { HandoverViewProps } from "./parts/handoverViewProps";
import "../../parts/workplace.css";
import "./handover.css";

const RunView = fetchedLater(async () => (await import("./run/RunView")).RunView, null);
const ChangeView = fetchedLater(async () => (await import("./change/ChangeView")).ChangeView, null);
const TroubleView = fetchedLater(async () => (await import("./trouble/TroubleView")).TroubleView, null);
const HoldbackView = fetchedLater(async () => (await import("./holdback/HoldbackView")).HoldbackView, null);
const RecordCheckView = fetchedLater(async () => (await import("./record/RecordCheckView")).RecordCheckView, null);

const VIEWS = [
  { view: "run", label: "Whole handover", View: RunView },
  { view: "change", label: "Change the combination", View: ChangeView },
  { view: "trouble", label: "Trouble bench", View: TroubleView },
  { view: "holdback", label: "Holdback", View: HoldbackView },
  { view: "record", label: "Check a record", View: RecordCheckView },
] as const;

const LINKS = VIEWS.map(({ view, label }) => ({ key: view, label, href: `#/handover?view=${view}` }));

/** The rest of the job, from a fresh lock to a signed-off door, in four parts, and a check of its record. */
export function HandoverScreen(props: HandoverViewProps) {
  const asked = props.query.get("view");
  const { view, View } = VIEWS.find((one) => one.view === asked) ?? VIEWS[0];
  return (
    <main className="handover">
      <h1 className="visually-hidden">Handover</h1>
      <LinkRow
        className="handover-views tabs px-edge print:hidden"
        label="Parts of the handover"
        links={LINKS}
        current={view}
      />
      <div className="px-edge pt-3">
        <WordsHere>
          <WordLink word="holdback">holdback</WordLink>
          <WordLink word="egress">egress</WordLink>
          <WordLink word="change-key">change key</WordLink>
        </WordsHere>
      </div>
      <div className="handover-part">
        <View {...props} />
      </div>
    </main>
  );
}
