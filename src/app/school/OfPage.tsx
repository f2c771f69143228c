import type { Logbook } from "../../store/logbook";
import { fetchedLater } from "../parts/page/fetchedLater";
import { DueHere } from "./DueHere";

/** Fetched on the page of the sittings alone, which has their code anyway. */
const GivenLine = fetchedLater(async () => (await import("./GivenLine")).GivenLine, null);

interface OfPageProps {
  readonly path: string;
  /** Whoever practices here, as the class knows the person; null for anybody else. */
  readonly person: { readonly id: string; readonly name: string } | null;
  readonly logbook: Logbook;
}

/** What a class has to say on a page: what is due on the start page, whether a sitting was sent on that of the sittings. */
export function OfPage({ path, person, logbook }: OfPageProps) {
  if (path === "sittings") return <GivenLine />;
  if (person === null || !["", "start"].includes(path)) return null;
  return <DueHere key={person.id} person={person} logbook={logbook} />;
}
