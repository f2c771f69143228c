import { harmlessName, harmlessText } from "../../lock/harmlessText";
import { DNS_NAMESPACE, uuid5 } from "./uuid5";

/** Where our own names live: an example domain, for there is no server behind them. */
const HOME = "https://gatefall.example";
const XAPI = `${HOME}/xapi`;
const ADL = "http://adlnet.gov/expapi";

const verb = (id: string, word: string): Verb => ({ id, display: { "en-US": word } });

/** A verb with its word. */
interface Verb {
  readonly id: string;
  readonly display: LanguageMap;
}

/** A text in American English. */
interface LanguageMap {
  readonly "en-US": string;
}

/** Verbs of ADL where one fits; zeroing has a verb of our own. */
export const VERBS = {
  attempted: verb(`${ADL}/verbs/attempted`, "attempted"),
  answered: verb(`${ADL}/verbs/answered`, "answered"),
  completed: verb(`${ADL}/verbs/completed`, "completed"),
  passed: verb(`${ADL}/verbs/passed`, "passed"),
  failed: verb(`${ADL}/verbs/failed`, "failed"),
  terminated: verb(`${ADL}/verbs/terminated`, "terminated"),
  mastered: verb(`${ADL}/verbs/mastered`, "mastered"),
  zeroed: verb(`${XAPI}/verbs/zeroed`, "set the zero of"),
} as const;

/** Types of activity, all of ADL. */
export const TYPES = {
  simulation: `${ADL}/activities/simulation`,
  assessment: `${ADL}/activities/assessment`,
  objective: `${ADL}/activities/objective`,
  interaction: `${ADL}/activities/cmi.interaction`,
} as const;

/** A choice of a question. */
interface InteractionComponent {
  readonly id: string;
  readonly description: LanguageMap;
}

/** What somebody did something with. */
export interface Activity {
  readonly objectType: "Activity";
  readonly id: string;
  readonly definition: {
    readonly type: string;
    readonly name: LanguageMap;
    readonly description?: LanguageMap;
    readonly interactionType?: "choice";
    readonly correctResponsesPattern?: readonly string[];
    readonly choices?: readonly InteractionComponent[];
  };
}

/** What came of it. */
export interface Result {
  readonly score?: { readonly scaled: number; readonly raw: number; readonly min: number; readonly max: number };
  readonly success?: boolean;
  readonly completion?: boolean;
  readonly response?: string;
  readonly duration?: string;
  readonly extensions?: Readonly<Record<string, unknown>>;
}

/** One statement, as IEEE 9274.1.1 (xAPI 1.0.3 and 2.0) has it; only the parts that are written here. */
export interface XapiStatement {
  readonly id: string;
  readonly actor: {
    readonly objectType: "Agent";
    readonly name: string;
    readonly account: { readonly homePage: string; readonly name: string };
  };
  readonly verb: Verb;
  readonly object: Activity;
  readonly result: Result;
  readonly context: {
    readonly registration?: string;
    readonly contextActivities?: { readonly parent: readonly Activity[] };
    readonly platform: string;
    readonly language: string;
  };
  readonly timestamp: string;
}

/** A text in American English, harmless to show. */
export const inEnglish = (text: string): LanguageMap => ({ "en-US": harmlessText(text) });

/** A part of an address made of any text. */
export const pathPart = (text: string): string => encodeURIComponent(harmlessText(text));

/** An activity of ours. @param path - of parts that are fit for an address */
export const activity = (path: string, type: string, name: string): Activity => ({
  objectType: "Activity",
  id: `${XAPI}/activities/${path}`,
  definition: { type, name: inEnglish(name) },
});

/** An extension of ours, by its address. */
export const extension = (name: string): string => `${XAPI}/extensions/${name}`;

/** Ids of all statements hang on this and on the record they are of. */
const NAMESPACE = uuid5(DNS_NAMESPACE, "gatefall.example");

/** The id of what a record is stated as: the same on every device, so that a second upload adds nothing. */
export const statementId = (kind: string, recordId: string): string => uuid5(NAMESPACE, `${kind}:${recordId}`);

/** The registration that a sitting and its tries have in common. */
export const registrationOf = (sittingId: string): string => statementId("registration", sittingId);

/** A duration of ISO 8601, to a hundredth of a second as IEEE 9274.1.1 compares them. */
export const duration = (span_ms: number): string => `PT${Number((span_ms / 1000).toFixed(2))}S`;

/** Last moment of a year of four digits, which is all that a timestamp takes (RFC 3339). */
const LAST_MOMENT = Date.UTC(9999, 11, 31, 23, 59, 59, 999);

/** A moment as a timestamp. @param moment - milliseconds since 1970 */
export const timestamp = (moment: number): string =>
  new Date(Number.isFinite(moment) ? Math.min(LAST_MOMENT, Math.max(0, moment)) : 0).toISOString();

/** Whose statement it is. @param names - of people by id */
export function actorOf(personId: string, names: ReadonlyMap<string, string>): XapiStatement["actor"] {
  const name = harmlessName(names.get(personId) ?? personId);
  // Accounts are of this machine, by id; no address of a person is written.
  return { objectType: "Agent", name, account: { homePage: `${HOME}/local`, name: personId } };
}
