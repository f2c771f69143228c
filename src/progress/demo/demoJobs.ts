import type { JobRecord } from "../../records/jobRecord";
import { type DemoWeek, demoJobsOf } from "./demoWeek";

/** What is practiced in the demo week beside dialing and fitting. */
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

/** The jobs of one invented person in the demo week; none for a name that is not among them. */
export function demoJobs(name: string, personId: string, week: DemoWeek): JobRecord[] {
  const own = DEMO_JOBS[name];
  if (own === undefined) return [];
  return DEMO_KINDS.flatMap((kind) => {
    const ends = own[kind].map((missed) => () => ({ kind, missed }));
    return demoJobsOf(kind, personId, ends, week);
  });
}
