import type { JobRecord } from "../../records/jobRecord";
import { fitted, judged } from "./demoFits";
import { served } from "./demoVisits";
import { type DemoEnd, type DemoWeek, demoJobsOf } from "./demoWeek";

const KINDS = ["fitting", "inspection", "service"] as const;

const times = (count: number, end: DemoEnd): readonly DemoEnd[] => Array.from({ length: count }, () => end);

/** Fits, judged fits and visits of the demo week by person. Invented; Ondrell shows every skill. */
const FITTING_WEEK: Readonly<Record<string, Readonly<Record<(typeof KINDS)[number], readonly DemoEnd[]>>>> = {
  Ondrell: { fitting: times(12, fitted()), inspection: times(12, judged()), service: times(12, served()) },
  Pelline: {
    fitting: [fitted("key-screw-unsecured"), fitted(), fitted()],
    inspection: times(3, judged()),
    service: [served(), served()],
  },
  Tavro: {
    fitting: [fitted("ring-off-center"), fitted()],
    inspection: [judged(), judged({ has: ["end-play"], names: ["end-play", "gap-wide"] }), judged()],
    service: [served("record.read"), served()],
  },
  Dorvik: {
    fitting: [fitted("wrong-keyway"), fitted("rubs")],
    inspection: [judged({ has: ["key-not-seated"], names: ["key-not-seated"], skips: ["key", "nose"] })],
    service: [served("section.read", "measured")],
  },
  Mibsy: {
    fitting: [fitted(), fitted("strike-by-one-screw", "ring-loose")],
    inspection: [judged({ has: ["rubs", "ring-loose"], names: ["rubs"] }), judged()],
    service: [served("record.written")],
  },
  Jorrel: {
    fitting: [fitted("end-play")],
    inspection: [judged({ has: ["ring-off-center"], names: [] })],
    service: [served("door.held"), served("asked")],
  },
};

/** What one invented person fits, judges and serves in the demo week; nothing for a name that is not among them. */
export function demoFittingWeek(name: string, personId: string, week: DemoWeek): JobRecord[] {
  const own = FITTING_WEEK[name];
  if (own === undefined) return [];
  return KINDS.flatMap((kind) => demoJobsOf(kind, personId, own[kind], week));
}
