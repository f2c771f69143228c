import { classServer } from "../parts/page/classServer";
import { fetchedLater } from "../parts/page/fetchedLater";

const EMPTY = <main className="workplace" />;

/** What an instructor has of a class server; of a page that none sent there is nothing, as of any other address. */
export const InstructorScreen = fetchedLater(async () => {
  if (classServer() !== null) return (await import("./ClassroomScreen")).ClassroomScreen;
  location.replace("#/start");
  return () => EMPTY;
}, EMPTY);
