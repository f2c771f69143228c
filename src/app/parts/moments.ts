/** Tells moments. What does it is made at the first: to make one takes a browser as long as to draw a page. */
function teller(options: Intl.DateTimeFormatOptions): (moment: number) => string {
  let format: Intl.DateTimeFormat | null = null;
  return (moment) => {
    format ??= new Intl.DateTimeFormat("en-US", options);
    return format.format(moment);
  };
}

/** "Nov 24, 2026" */
export const dayText = teller({ day: "numeric", month: "short", year: "numeric" });

/** "Nov 24" */
export const shortDayText = teller({ day: "numeric", month: "short" });

/** "14:05" */
export const clockText = teller({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
