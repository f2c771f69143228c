interface LinesProps {
  /** Sentences, each once. */
  readonly of: readonly string[];
  readonly className?: string;
}

/** Sentences as a list. */
export function Lines({ of, className }: LinesProps) {
  return (
    <ul className={className}>
      {of.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
