/** Words that are printed on the sheets. */
export const SHEET_WORDS = {
  base: "Base sheet",
  disc: "Disc",
  scale: "Print at 100 %. This line is 100 mm long: measure it.",
  line: "100 mm",
  cut: "Cut along the outer circle. Glue the knob inside the dashed circle.",
} as const;
