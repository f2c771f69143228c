const DAY = new Intl.DateTimeFormat("en-US", { day: "numeric", month: "short", year: "numeric" });
const CLOCK = new Intl.DateTimeFormat("en-US", { hour: "2-digit", minute: "2-digit", hourCycle: "h23" });

/** "Nov 24, 2026" */
export const dayText = (moment: number) => DAY.format(moment);

const SHORT_DAY = new Intl.DateTimeFormat("en-US", { day: "numeric", month: "short" });

/** "Nov 24" */
export const shortDayText = (moment: number) => SHORT_DAY.format(moment);

/** "14:05" */
export const clockText = (moment: number) => CLOCK.format(moment);
