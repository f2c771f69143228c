import { classServer } from "../parts/page/classServer";
import { fetchedLater } from "../parts/page/fetchedLater";
import { whenIdle } from "../parts/page/whenIdle";

const EMPTY = <main className="workplace" />;

/*
 * What the app has of a class, each with all that it needs: the first screen's script names the files of what it leads to, and
 * has no room for more names.
 */

/** The page where a bench joins a class; of a page that no class server sent there is none, as of any other address. */
export const JoinScreen = fetchedLater(async () => {
  if (classServer() !== null) return (await import("./JoinScreen")).JoinScreen;
  location.replace("#/start");
  return () => EMPTY;
}, EMPTY);

/** The line of a bench of a class; the page does not wait for it. */
export const SchoolLine = fetchedLater(
  async () => {
    await new Promise<void>(whenIdle);
    return (await import("./SchoolLine")).SchoolLine;
  },
  <div className="min-h-[44px]" />,
  () => null,
);
