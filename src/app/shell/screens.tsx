import { FilesGoneLine } from "../parts/page/FilesGoneLine";
import { fetchedLater } from "../parts/page/fetchedLater";
import { StartScreen } from "../start/StartScreen";

const EMPTY = <main className="workplace" />;

const inClass = () => import("./ofClass");

/** The screens. All but the first come when they are asked for. */
export const SCREENS = {
  start: Object.assign(StartScreen, { fetchAhead: () => Promise.resolve() }),
  bench: fetchedLater(async () => (await import("../exercises/bench/BenchScreen")).BenchScreen, EMPTY),
  fitting: fetchedLater(async () => {
    const { FittingScreen, recallTexts } = await import("../exercises/fitting/FittingScreen");
    await recallTexts();
    return FittingScreen;
  }, EMPTY),
  zeroing: fetchedLater(async () => (await import("../exercises/zeroing/ZeroingScreen")).ZeroingScreen, EMPTY),
  handover: fetchedLater(async () => (await import("../exercises/handover/HandoverScreen")).HandoverScreen, EMPTY),
  sheets: fetchedLater(async () => (await import("../sheets/SheetsScreen")).SheetsScreen, EMPTY),
  sittings: fetchedLater(async () => (await import("../sittings/SittingsScreen")).SittingsScreen, EMPTY),
  logbook: fetchedLater(async () => {
    // The database opens while the screen is still fetched.
    import("../keeping/currentLogbook").then(({ currentLogbook }) => currentLogbook()).catch(() => undefined);
    return (await import("../logbook/LogbookScreen")).LogbookScreen;
  }, EMPTY),
  desk: fetchedLater(async () => (await import("../deskFiles/DeskScreen")).DeskScreen, EMPTY),
  dial: fetchedLater(async () => (await import("../setup/SetupScreen")).SetupScreen, EMPTY),
  join: fetchedLater(async () => (await inClass()).JoinScreen, null),
  instructor: fetchedLater(async () => (await inClass()).InstructorScreen, null),
  words: fetchedLater(async () => (await import("../words/WordsScreen")).WordsScreen, EMPTY),
};

/** All that is wrong with an address. */
export const AddressProblems = fetchedLater(
  async () => (await import("./AddressProblems")).AddressProblems,
  null,
  FilesGoneLine,
);

/** The line of a bench of a class. */
export const SchoolLine = fetchedLater(async () => (await inClass()).SchoolLine, null);

/** The sittings go with their person, and the logbook knows no other screen. */
export const sittingsForgotten = async () => (await import("../sittings/session/currentSitting")).forgetSittings;
