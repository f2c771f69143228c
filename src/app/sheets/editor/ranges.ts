/** A number, or a closed range of numbers. */
export type Range = number | readonly [number, number];

const numberOf = (text: string) => (text.trim() === "" ? Number.NaN : Number(text));

const rangeOf = (part: string): Range => {
  const [low = "", high] = part.split(/\s*[-–]\s*/);
  return high === undefined ? numberOf(low) : [numberOf(low), numberOf(high)];
};

/** Ranges as one types them: "5, 0-20, 85-99". */
export function rangesText(ranges: readonly Range[] | undefined): string {
  return (ranges ?? []).map((range) => (typeof range === "number" ? String(range) : range.join("-"))).join(", ");
}

/** Ranges from text; what is no number becomes NaN, for the check of the sheet to tell. Empty text gives undefined. */
export function parseRanges(text: string): Range[] | undefined {
  const parts = text
    .split(/[,;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  return parts.length === 0 ? undefined : parts.map(rangeOf);
}

/** Ranges from text where single numbers are ranges too. */
export function parseWholeRanges(text: string): (readonly [number, number])[] | undefined {
  return parseRanges(text)?.map((range) => (typeof range === "number" ? [range, range] : range));
}
