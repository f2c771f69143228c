import type { Help } from "../../dialing/advice";
import type { Combination } from "../../lock/combination";
import type { Graduations } from "../../lock/dial";
import type { CombinationRules, Profile } from "../../lock/profile";
import type { Claim } from "../../statistics/claim";
import type { Topic } from "../questions/question";
import type { Admission } from "./admission";
import type { LostSightRule } from "./lostSightRule";

/** Where the combinations of a station come from. */
export type CombinationPolicy =
  | { readonly policy: "as-set" }
  | {
      readonly policy: "drawn";
      /** The profile's own rules, if left out. */
      readonly rules?: CombinationRules | undefined;
      /** How often a new one is drawn; for every try, if left out. */
      readonly each?: "try" | "station" | undefined;
    }
  /** Used in turn, and again from the first when there are more tries. */
  | { readonly policy: "fixed"; readonly list: readonly Combination[] };

/** Trouble that a sheet injects, from a try on, or from the first. All sizes are graduations; of noise, a standard deviation. */
export type Condition = { readonly from?: number | undefined } & (
  | { readonly kind: "index-offset" | "lost-motion" | "noise"; readonly size: Graduations }
  | { readonly kind: "heavy-dial" | "light-dial" | "no-cutaway" }
);

interface AnyStation {
  /** A name of its own within the sheet. */
  readonly id: string;
  readonly title?: string | undefined;
  /** What to do, in a sentence or two. */
  readonly task?: string | undefined;
  /** Id of a shipped profile, or a whole one. */
  readonly profile: string | Profile;
  readonly help: Help;
  /** Tries, an integer in [1, 200]. */
  readonly repetitions: number;
  /** Longest time of one try, seconds; a try that takes longer does not count as right. */
  readonly timeLimit_s?: number | undefined;
  readonly conditions?: readonly Condition[] | undefined;
}

/** A mark of any station; a mark left out is not asked, here and in each kind. */
interface AnyMarks {
  /** Longest mean time of a try, seconds. */
  readonly meanTime_s?: number | undefined;
}

/** A mark of stations whose tries have faults. */
interface FaultMarks extends AnyMarks {
  /** Most tries with any fault. */
  readonly faultyTries?: number | undefined;
}

/** A mark of stations of jobs that are right or not. */
interface RightMarks extends AnyMarks {
  /** Tries that must be right, by the rule of their kind. */
  readonly right?: number | undefined;
}

/** A station with a dial and nothing else. */
interface DialStation extends AnyStation {
  /** Any source, if left out; a coarse one never turns a dial whose stops are marked to a fraction (`isAdmitted`). */
  readonly turnedBy?: Admission | undefined;
  /** What comes of a try in which a device lost the hand, so that its turns are in doubt; "counts", if left out. */
  readonly lostSight?: LostSightRule | undefined;
}

/** What a dialing station asks for. */
export interface DialingMarks extends FaultMarks {
  /** Tries that must be right the first time, of all repetitions. */
  readonly firstTime?: number | undefined;
  /** Chance of opening that the tries must show, and how surely. */
  readonly claim?: Claim | undefined;
  /** Largest mean stop error, either way, graduations. */
  readonly stopErrorBias?: Graduations | undefined;
  /** Largest standard deviation of the stop error, graduations. */
  readonly stopErrorSpread?: Graduations | undefined;
}

/** Tries at dialing one lock. */
export interface DialingStation extends DialStation {
  readonly kind: "dialing";
  readonly combinations: CombinationPolicy;
  /** Only so many numbers are dialed, from the first; a try is right when they are without fault. */
  readonly upTo?: number | undefined;
  readonly passMarks: DialingMarks;
}

/** What a zeroing station asks for. */
export interface ZeroingMarks extends AnyMarks {
  /** Tries that must end with a zero shown to be within tolerance from both directions. */
  readonly zeroed?: number | undefined;
  /** Most readings refused over all tries. */
  readonly refused?: number | undefined;
}

/** Tries at setting one lock's zero from both directions. */
export interface ZeroingStation extends DialStation {
  readonly kind: "zeroing";
  /** Largest error of a zero that is good enough, graduations. */
  readonly tolerance?: Graduations | undefined;
  /** Accepted readings that close a series, an integer in [2, 20]. */
  readonly readings?: number | undefined;
  readonly passMarks: ZeroingMarks;
}

/** A station with a job: it injects no trouble, for the exercise brings its own. */
interface JobStation extends AnyStation {
  readonly conditions?: undefined;
}

/** Where new combinations come from: a lock is never changed to the one it has. */
export type NewCombinationPolicy = Exclude<CombinationPolicy, { readonly policy: "as-set" }>;

/** What a station of changes asks for. */
export type ChangeMarks = FaultMarks & RightMarks;

/** Changes from the combination a lock comes with to a new one, each proved with the door open. */
export interface ChangeStation extends JobStation {
  readonly kind: "change";
  readonly combinations: NewCombinationPolicy;
  readonly passMarks: ChangeMarks;
}

/** What a trouble station asks for. */
export interface TroubleMarks extends RightMarks {
  /** Largest mean of how far the sizes told are off, graduations. */
  readonly sizeError?: Graduations | undefined;
}

/** Locks with one hidden condition each, to be named and measured. */
export interface TroubleStation extends JobStation {
  readonly kind: "trouble";
  /** Ids of the conditions to draw from, all where left out. Which there are, the handover layer knows. */
  readonly pool?: readonly string[] | undefined;
  readonly passMarks: TroubleMarks;
}

/** What a handover station asks for. */
export interface HandoverMarks extends FaultMarks {
  /** Runs with nothing missing and no fault. */
  readonly clean?: number | undefined;
}

/** Whole handovers, from a fresh lock to a signed-off door. */
export interface HandoverStation extends JobStation {
  readonly kind: "handover";
  /** Whether the trainee dials with the own hand where a step dials, or has a simulated hand do it. */
  readonly hand: "real" | "simulated";
  /** Whether all parts of the lock are in the tray, to be fitted first; the lock is on its door where left out. */
  readonly fit?: "first" | undefined;
  readonly passMarks: HandoverMarks;
}

/** What a fitting station asks for. */
export interface FittingMarks extends RightMarks {
  /** Most faults over all fits; a fit that is never said to be ready does not pass. */
  readonly faults?: number | undefined;
}

/** Dials to be fitted, each on a door of its own with all parts in the tray. */
export interface FittingStation extends JobStation {
  readonly kind: "fitting";
  readonly passMarks: FittingMarks;
}

/** What a station of service visits asks for. */
export interface ServiceMarks extends RightMarks {
  /** Most faults over all visits; a visit that never ends does not pass. */
  readonly faults?: number | undefined;
}

/** Visits to locks in use for years, each with papers of its own. */
export interface ServiceStation extends JobStation {
  readonly kind: "service";
  readonly passMarks: ServiceMarks;
}

/** What a station of fits to be judged asks for. */
export interface InspectionMarks extends RightMarks {
  /** Most faults overlooked or named though they are not there, over all tries; a try without an answer does not pass. */
  readonly mistakes?: number | undefined;
}

/** Locks that somebody else has fitted: each has some faults, or none. */
export interface InspectionStation extends JobStation {
  readonly kind: "inspection";
  readonly passMarks: InspectionMarks;
}

/** One exercise of a sheet. */
export type Station =
  | DialingStation
  | ZeroingStation
  | ChangeStation
  | TroubleStation
  | HandoverStation
  | FittingStation
  | ServiceStation
  | InspectionStation;

/** How the tries of all stations follow each other. */
export type Order = "blocked" | "interleaved" | "random";

/** What a sitting asks of one topic. */
export interface TopicShare {
  readonly topic: Topic;
  readonly count: number;
}

/** Knowledge questions of a sitting. */
export interface QuestionPaper {
  readonly topics: readonly TopicShare[];
  /** Right answers that pass, of all asked. */
  readonly passMark: number;
}

/** Rules of a sitting under certification conditions. */
export interface SittingRules {
  readonly pauseAllowed: boolean;
  /** What a reload or crash does: the sitting goes on (a try under way is lost), or it is recorded as broken off. */
  readonly onReload: "resume" | "broken-off";
  readonly clockHideable: boolean;
  /** Longest working time of the whole sitting, seconds. */
  readonly timeLimit_s?: number | undefined;
  readonly questions?: QuestionPaper | undefined;
}

/** A drill sheet: what an instructor sets. Plain JSON throughout. */
export interface Sheet {
  readonly format: "gatefall-sheet";
  readonly version: 1;
  readonly title: string;
  readonly purpose: string;
  /** Read before the start, one after another. */
  readonly instructions?: readonly string[] | undefined;
  readonly cautions?: readonly string[] | undefined;
  readonly stations: readonly Station[];
  readonly order: Order;
  /** Fixes order and drawn combinations for everyone; else each run brings its own. */
  readonly seed?: number | undefined;
  /** Only in a sheet that is sat as a test. */
  readonly sitting?: SittingRules | undefined;
  readonly source?: string | undefined;
}
