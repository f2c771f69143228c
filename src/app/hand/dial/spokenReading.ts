const UP_TO_NINETEEN =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety".split(" ");

function wholeInWords(number: number): string {
  if (number >= 100) {
    const rest = number % 100;
    return rest === 0 ? "one hundred" : `one hundred ${wholeInWords(rest)}`;
  }
  const small = UP_TO_NINETEEN[number];
  if (small !== undefined) return small;
  const ones = number % 10;
  return ones === 0 ? `${TENS[Math.floor(number / 10)]}` : `${TENS[Math.floor(number / 10)]}-${UP_TO_NINETEEN[ones]}`;
}

/**
 * A reading as one says it: "thirty-one point two", "forty".
 *
 * @param text - a reading from 0 to 199.9 with one decimal
 */
export function spokenReading(text: string): string {
  const [whole = "0", tenth = "0"] = text.split(".");
  const spoken = wholeInWords(Number(whole));
  return tenth === "0" ? spoken : `${spoken} point ${UP_TO_NINETEEN[Number(tenth)]}`;
}
