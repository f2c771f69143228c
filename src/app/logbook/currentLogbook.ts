import { Logbook } from "../../logbook/logbook";
import { LogbookDatabase } from "../../logbook/logbookDatabase";
import type { PersonRecord } from "../../logbook/records";
import { Store } from "../shell/store";

const PERSON_KEY = "gatefall.person";

/** The logbook of this browser, and who practices now. A store: it changes when either does. */
export class CurrentLogbook extends Store {
  readonly logbook: Logbook;
  /** Who practices now; null before anyone is chosen. */
  person: PersonRecord | null = null;

  constructor() {
    super();
    this.logbook = new Logbook(new LogbookDatabase(), () => this.changed());
  }

  /** Chooses who practices now, and remembers it for the next visit. */
  choose(person: PersonRecord | null): void {
    this.person = person;
    try {
      if (person === null) localStorage.removeItem(PERSON_KEY);
      else localStorage.setItem(PERSON_KEY, person.id);
    } catch {
      // Where nothing is kept, the choice lasts as long as the page.
    }
    this.changed();
  }

  /** Who practiced last, by id; null where nobody did. */
  get rememberedId(): string | null {
    try {
      return localStorage.getItem(PERSON_KEY);
    } catch {
      return null;
    }
  }
}

let current: Promise<CurrentLogbook> | null = null;

/** Opens the logbook once. It never holds up a screen: callers go on and hear of it when it is there. */
export function currentLogbook(): Promise<CurrentLogbook> {
  current ??= (async () => {
    const opened = new CurrentLogbook();
    await opened.logbook.open();
    const people = await opened.logbook.read((database) => database.people.toArray(), []);
    opened.person = people.find(({ id }) => id === opened.rememberedId) ?? people[0] ?? null;
    return opened;
  })();
  return current;
}
