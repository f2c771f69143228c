import { useState } from "react";
import { hasTraces } from "../keeping/traces";
import { fetchedLater } from "../parts/page/fetchedLater";
import { FIRST_COURSE } from "./firstVisit";
import { StartPage } from "./StartPage";

const ReturningStart = fetchedLater(
  async () => (await import("./ReturningStart")).ReturningStart,
  <StartPage progress={FIRST_COURSE} isReturning={false} isKnown={false} />,
);

/** Where a visit begins. A newcomer has no records, so nothing that reads them is fetched. */
export function StartScreen() {
  const [isFirst] = useState(() => !hasTraces());
  return isFirst ? <StartPage progress={FIRST_COURSE} isReturning={false} isKnown={true} /> : <ReturningStart />;
}
