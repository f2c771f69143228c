/** What is written in the hub of a dial. */
export interface HubText {
  /** The large line: the reading, or a word. Empty for none. */
  readonly reading: string;
  /** The small line below it. */
  readonly note: string;
  /** Whether the large line is pale: it is being taken away, lesson by lesson. */
  readonly isFaint?: boolean;
}

/** The text in the middle of the knob. */
export function Hub({ text }: { readonly text: HubText | null }) {
  if (text === null) return null;
  const { reading, note, isFaint } = text;
  return (
    <>
      {reading !== "" && (
        <text className={isFaint ? "dial-reading opacity-40" : "dial-reading font-medium"} y={8}>
          {reading}
        </text>
      )}
      <text className="dial-note" y={reading === "" ? 5 : 34}>
        {note}
      </text>
    </>
  );
}
