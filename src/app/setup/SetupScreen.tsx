import { fetchedLater } from "../parts/page/fetchedLater";
import { setupAsked } from "./session/setupAddress";

const EMPTY = <main className="workplace" />;

// Each with all that it needs: the first screen's script names the files of what it leads to, and has no room for more names.
const SetupPage = fetchedLater(async () => (await import("./SetupPage")).SetupPage, EMPTY);
const PrintPage = fetchedLater(async () => (await import("./print/PrintPage")).PrintPage, EMPTY);

/** The page of a dial in the hand: sets one up, or says how to build one. */
export function SetupScreen({ query }: { readonly query: URLSearchParams }) {
  const asked = setupAsked(query);
  return asked.isPrint ? <PrintPage asked={asked} /> : <SetupPage key={asked.perTurn} asked={asked} />;
}
