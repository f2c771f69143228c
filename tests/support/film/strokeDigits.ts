/** Digits as strokes in a box 0.6 wide and 1 high, y down: the same on every system, whatever fonts it has. */
const DIGITS: readonly string[] = [
  "M.3 0C.1 0 0 .2 0 .5S.1 1 .3 1 .6 .8 .6 .5 .5 0 .3 0Z",
  "M.1 .2L.33 0V1",
  "M0 .25C0 0 .6-.1 .6 .27C.6 .5 .1 .7 0 1H.6",
  "M.03 .15C.15-.05 .57-.05 .57 .25C.57 .5 .3 .47 .2 .47C.35 .47 .6 .5 .6 .74C.6 1.08 .1 1.08 0 .83",
  "M.45 1V0L0 .7H.6",
  "M.55 0H.1L.05 .45C.25 .3 .6 .35 .6 .68C.6 1.05 .1 1.1 0 .85",
  "M.5 .03C.2 .1 0 .4 0 .7C0 1.1 .6 1.1 .6 .7C.6 .3 .1 .35 .02 .62",
  "M0 0H.6C.4 .3 .25 .6 .2 1",
  "M.3 .47C0 .47 0 0 .3 0S.6 .47 .3 .47C-.1 .47-.1 1 .3 1S.7 .47 .3 .47Z",
  "M.1 .97C.4 .9 .6 .6 .6 .3C.6-.1 0-.1 0 .3C0 .7 .5 .65 .58 .38",
];

/** A number's strokes around the origin, its middle; `size` is the height of a digit. */
export function numberPath(number: number, size: number): string {
  const digits = [...String(number)];
  const width = digits.length * 0.6 + (digits.length - 1) * 0.25;
  const strokes = digits
    .map((digit, i) => `<path transform="translate(${-width / 2 + i * 0.85} -0.5)" d="${DIGITS[Number(digit)]}"/>`)
    .join("");
  return `<g transform="scale(${size})" fill="none" stroke-width="0.14">${strokes}</g>`;
}
