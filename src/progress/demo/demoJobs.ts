import type { HelpLevel } from "../../records/attemptRecord";
import type { JobRecord } from "../../records/jobRecord";
import { jobIsRight } from "../../records/jobRight";
import type { Chance } from "../../statistics/chance";

/** What is practiced in the demo week beside dialing. */
const DEMO_KINDS = ["change", "trouble", "handover"] as const;
type DemoKind = (typeof DEMO_KINDS)[number];

/** How an invented person's jobs of one kind went, in order: what was missed at each. */
type Outcomes = readonly (readonly string[])[];

const RIGHT: readonly string[] = [];
const times = (count: number): Outcomes => Array.from({ length: count }, () => RIGHT);

/** The jobs of the demo week by person. Invented; Ondrell shows every skill, nobody else has had the time. */
const DEMO_JOBS: Readonly<Record<string, Readonly<Record<DemoKind, Outcomes>>>> = {
  Ondrell: { change: times(12), trouble: times(12), handover: times(12) },
  Pelline: { change: times(4), trouble: [["size"], RIGHT, RIGHT], handover: [["second-person"], RIGHT] },
  Tavro: { change: [["number-set-off"], RIGHT, RIGHT], trouble: [RIGHT, ["not-named"], RIGHT], handover: [RIGHT] },
  Dorvik: {
    change: [["key-turned-unaligned"], ["number-set-off"], RIGHT],
    trouble: [["not-named"], RIGHT],
    handover: [["proved-three-times", "way-out"], ["holdback-shown"]],
  },
  Mibsy: {
    change: [RIGHT, ["door-shut-unproved"]],
    trouble: [RIGHT, RIGHT, ["not-named"]],
    handover: [["proved-three-times"], ["record"]],
  },
  Jorrel: { change: [["number-set-off"], ["number-set-off"]], trouble: [RIGHT, RIGHT], handover: [["mounting"]] },
};

/** Day of the demo week on which each kind is practiced, in the afternoon. */
const DAY_OF: Readonly<Record<DemoKind, number>> = { change: 3, trouble: 4, handover: 5 };
const HELP_OF: Readonly<Record<DemoKind, HelpLevel>> = { change: "counts", trouble: "counts", handover: "silent" };

const DAY_MS = 86_400_000;
const AFTERNOON_MS = 13 * 3_600_000;
/** From the beginning of one job to the next. */
const PAUSE_MS = 12 * 60_000;
/** Shortest and longest job. */
const [LEAST_MS, MOST_MS] = [150_000, 600_000] as const;

interface DemoWeek {
  /** Beginning of its Monday, milliseconds since 1970. */
  readonly monday: number;
  readonly drawId: () => string;
  readonly chance: Chance;
}

function demoJob(
  personId: string,
  kind: DemoKind,
  place: number,
  missed: readonly string[],
  week: DemoWeek,
): JobRecord {
  const startedAt = week.monday + (DAY_OF[kind] - 1) * DAY_MS + AFTERNOON_MS + place * PAUSE_MS;
  const duration_ms = Math.round(LEAST_MS + week.chance() * (MOST_MS - LEAST_MS));
  return {
    id: week.drawId(),
    createdAt: startedAt + duration_ms,
    updatedAt: startedAt + duration_ms,
    personId,
    startedAt,
    duration_ms,
    kind,
    profileId: "three-wheel",
    help: HELP_OF[kind],
    isRight: jobIsRight({ kind, missed: [...missed] }),
    missed: [...missed],
    tags: ["demo"],
  };
}

/** The jobs of one invented person in the demo week; none for a name that is not among them. */
export function demoJobs(name: string, personId: string, week: DemoWeek): JobRecord[] {
  const own = DEMO_JOBS[name];
  if (own === undefined) return [];
  return DEMO_KINDS.flatMap((kind) => own[kind].map((missed, place) => demoJob(personId, kind, place, missed, week)));
}
