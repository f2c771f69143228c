const IN_WORDS = new Intl.DateTimeFormat("en-US", {
  weekday: "long",
  day: "numeric",
  month: "long",
  year: "numeric",
  hour: "2-digit",
  minute: "2-digit",
  hourCycle: "h23",
  timeZoneName: "short",
});

/** A moment by the clock of this place, in words; a text that is no moment as it is. @param moment - ISO 8601 */
export function StartedAt({ moment }: { readonly moment: string }) {
  const at = Date.parse(moment);
  return Number.isNaN(at) ? moment : <time dateTime={moment}>{IN_WORDS.format(at)}</time>;
}
