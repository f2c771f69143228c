/** Ways to turn a dial, as records name them: a name once given stays. */
export const SOURCE_KINDS = [
  /** Mouse, finger, keys and buttons of the page itself. */
  "screen",
  "printed-dial",
  "ordinary-dial",
  "encoder",
  "phone",
  "midi",
  "gamepad",
  "knob-keys",
] as const;

/** A way to turn a dial. */
export type SourceKind = (typeof SOURCE_KINDS)[number];
