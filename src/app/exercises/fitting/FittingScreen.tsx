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

/** The words of each view that a newcomer may not know, in the order in which they are met. */
const WORDS: Readonly<Record<string, readonly (readonly [word: string, label: string])[]>> = {
  fit: [
    ["spindle", "spindle"],
    ["drive-cam", "cam"],
    ["spline-key", "keyway"],
    ["lead", "lead"],
    ["clearance", "gap"],
    ["lever", "lever, nose"],
    ["thread-locker", "thread locker"],
    ["end-play", "end play"],
    ["ring-off-center", "off center"],
    ["parallax", "parallax"],
    ["lost-motion", "lost motion"],
  ],
  find: [
    ["clearance", "gap"],
    ["end-play", "end play"],
    ["lever", "lever, nose"],
    ["ring-off-center", "off center"],
    ["parallax", "parallax"],
    ["lost-motion", "lost motion"],
  ],
  service: [
    ["service-visit", "service visit"],
    ["torque", "torque"],
    ["key-seat", "key seat"],
    ["lost-motion", "lost motion"],
    ["ring-off-center", "off center"],
  ],
};

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
          {WORDS[view]?.map(([word, label]) => (
            <WordLink key={word} word={word}>
              {label}
            </WordLink>
          ))}
        </WordsHere>
      </div>
      {view === "service" && <ServiceView {...props} />}
      {view === "find" && <FindView {...props} />}
      {view === "fit" && <DialFitting {...props} />}
    </main>
  );
}
