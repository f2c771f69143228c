import type { PersonRecord } from "../../records/records";
import { Logbook } from "../../store/logbook";
import { LogbookDatabase } from "../../store/logbookDatabase";
import type { Undo } from "../../store/moveRecords";
import { recordsOfKind } from "../../store/wholeLogbook";
import { newId } from "../parts/page/newId";
import { Store } from "../parts/page/store";
import { pageStore, storedText, storeText } from "../parts/storage/pageStore";
import { inOrderOfNames } from "./people";
import { PERSON_KEY } from "./traces";
import { WaitingShelf } from "./waitingShelf";

/** The logbook of this browser, and who practices now. A store: it changes when either does. */
export class CurrentLogbook extends Store {
  readonly logbook: Logbook;
  /** Whether a copy of what waits to be stored outlives the page. */
  isCopied = true;
  /** What was done last and can be undone, in a sentence; null where nothing was. */
  done: { readonly sentence: string; readonly undo: Undo } | null = null;
  private readonly shelf = new WaitingShelf(pageStore(), newId());
  /** Whose records are shown; null before anyone is there. */
  person: PersonRecord | null = null;

  constructor() {
    super();
    this.logbook = new Logbook(new LogbookDatabase(), { onChange: () => this.follow() });
  }

  /** Opens the logbook, and stores what pages before this one could not. Never throws. */
  async open(): Promise<void> {
    await this.logbook.open();
    // What cannot be stored now either stays for the next page.
    if (this.logbook.database !== null) await this.shelf.handOver(this.logbook).catch(() => undefined);
    // A database that fails to read is told by its own problem, and practice goes on.
    await this.settle().catch(() => this.choose(null));
  }

  /** Everyone, invented people last. @throws {LogbookError} when the storage fails */
  async people(): Promise<readonly PersonRecord[]> {
    const people = inOrderOfNames(await recordsOfKind(this.logbook, "people"));
    this.logbook.people.know(people);
    return people;
  }

  /** Chooses who practices now, and remembers it for the next visit. */
  choose(person: PersonRecord | null): void {
    this.person = person;
    if (person !== null) this.logbook.people.know([person]);
    storeText(PERSON_KEY, person?.id ?? null);
    this.changed();
  }

  /** Chooses again once people came or went: whoever was chosen, else the one of the last visit, else the first. */
  async settle(): Promise<void> {
    const people = await this.people();
    const wanted = this.person?.id ?? storedText(PERSON_KEY);
    this.choose(people.find(({ id }) => id === wanted) ?? people[0] ?? null);
  }

  /** Offers to undo what was just done, in place of what was done before. */
  offerUndo(sentence: string, undo: Undo): void {
    this.done = { sentence, undo };
    this.changed();
  }

  /** Undoes what was done last. @returns what came of it @throws {LogbookError} when the storage fails */
  async undo(): Promise<string> {
    await this.done?.undo();
    this.closeUndo();
    await this.settle();
    return "Undone.";
  }

  /** What was done last stays done. */
  closeUndo(): void {
    this.done = null;
    this.changed();
  }

  /** Copies at once what is not stored, also what is on its way to the database. */
  copyWaiting(): void {
    this.isCopied = this.shelf.keep(this.logbook.pending);
  }

  /** Another tab may have made the first person before this one's was stored: then that one practices here too. */
  private follow(): void {
    const { person, logbook } = this;
    if (person !== null && logbook.people.personFor(person.id) !== person.id) {
      this.person = null;
      void this.settle().catch(() => undefined);
    }
    this.copyWaiting();
    this.changed();
  }
}

let current: Promise<CurrentLogbook> | null = null;
let opened: CurrentLogbook | null = null;

/** The logbook, or null before it was asked for. */
export const openedLogbook = (): CurrentLogbook | null => opened;

/** Opens the logbook once. It never holds up a screen: callers go on and hear of it when it is there. */
export function currentLogbook(): Promise<CurrentLogbook> {
  current ??= (async () => {
    opened = new CurrentLogbook();
    await opened.open();
    return opened;
  })();
  return current;
}
