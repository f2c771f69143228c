/** What keys and mouse do to the dial, for whoever hears it and for whoever looks it up. */
export const KEYS_HELP: readonly string[] = [
  "Arrow keys turn the dial the way they point, by 1 graduation. Hold one down to keep turning; with Shift it turns fast.",
  "Comma and period turn by 0.1.",
  "Page Up and Page Down turn by 10; with Shift by one whole turn.",
  "The mouse wheel turns the dial once you have clicked it.",
  "R starts again. N draws new numbers. D shows or hides the digits.",
];
