interface LinesProps {
  /** Sentences, each once. */
  readonly of: readonly string[];
  readonly className?: string;
  /** Where they are said at once. */
  readonly role?: "alert";
}

/** Sentences as a list. */
export function Lines({ of, ...looks }: LinesProps) {
  return (
    <ul {...looks}>
      {of.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
