import type { Chance } from "../../../statistics/chance";
import { LinkRow } from "../../parts/LinkRow";
import { fetchedLater } from "../../parts/page/fetchedLater";
import { WordLink } from "../../words/WordLink";
import { WordsHere } from "../../words/WordsHere";
import { DialFitting } from "./DialFitting";

interface FittingScreenProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

const ServiceView = fetchedLater(async () => (await import("../service/ServiceView")).ServiceView, null);

const FindView = fetchedLater(async () => (await import("./find/FindView")).FindView, null);

const LINKS = [
  { key: "fit", label: "Fit the dial", href: "#/fitting" },
  { key: "find", label: "Find what is wrong", href: "#/fitting?view=find" },
  { key: "service", label: "Service visit", href: "#/fitting?view=service" },
];

/** To be waited for before the screen is drawn: what goes on here may be in the browser's database alone. */
export { recallTexts } from "../../parts/storage/safeTexts";

/** Fitting a lock, and the visit to one that was fitted years ago. */
export function FittingScreen(props: FittingScreenProps) {
  const view = LINKS.find(({ key }) => key === props.query.get("view"))?.key ?? "fit";
  return (
    <main className="fitting-page">
      <h1 className="visually-hidden">Fitting</h1>
      <LinkRow className="tabs px-edge" label="Parts of fitting" links={LINKS} current={view} />
      <div className="px-edge pt-3">
        <WordsHere>
          <WordLink word="spindle">spindle</WordLink>
          <WordLink word="drive-cam">cam</WordLink>
          <WordLink word="spline-key">key</WordLink>
          <WordLink word="clearance">gap</WordLink>
          <WordLink word="lever">lever, nose</WordLink>
          <WordLink word="lost-motion">lost motion</WordLink>
        </WordsHere>
      </div>
      {view === "service" && <ServiceView {...props} />}
      {view === "find" && <FindView {...props} />}
      {view === "fit" && <DialFitting {...props} />}
    </main>
  );
}
