/** Tags and note of a record, as somebody changed them. */
export interface RecordEdit {
  readonly tags?: readonly string[] | undefined;
  readonly note?: string | undefined;
  /** When, milliseconds since 1970. */
  readonly at: number;
}

/** A version of tags and note. */
export interface EditVersion extends RecordEdit {
  readonly version: number;
}

/** What comes of an edit: versions to add, the last of which holds, and whether the edit does. */
export interface MergedEdit {
  readonly added: readonly EditVersion[];
  readonly holds: EditVersion;
  readonly isTaken: boolean;
}

const filledUp = ({ tags, note, at }: RecordEdit, before: RecordEdit): RecordEdit => ({
  tags: tags ?? before.tags,
  note: note ?? before.note,
  at,
});

const isSame = (one: RecordEdit, other: RecordEdit) =>
  one.at === other.at && one.note === other.note && JSON.stringify(one.tags) === JSON.stringify(other.tags);

/**
 * Puts an edit on top of what there is. The rule for conflicts: of two edits made on one version the later by the clock
 * holds, whichever came first; both stay as versions. An edit that comes again changes nothing.
 *
 * @param versions - all there are, in order; none where nobody changed the record yet
 * @param base - the version that the edit was made on, 0 for the record as it was received
 * @param now - the server's clock: no bench is ahead of it
 */
export function mergedEdit(versions: readonly EditVersion[], edit: RecordEdit, base: number, now: number): MergedEdit {
  const holding = versions.at(-1) ?? { version: 0, at: 0 };
  const own = filledUp({ ...edit, at: Math.min(edit.at, now) }, holding);
  const known = versions.find((one) => isSame(one, filledUp({ ...edit, at: one.at }, one)) && one.at === own.at);
  if (known !== undefined) return { added: [], holds: holding, isTaken: isSame(holding, known) };
  const next = { ...own, version: holding.version + 1 };
  if (base === holding.version || own.at >= holding.at) return { added: [next], holds: next, isTaken: true };
  const again = { ...holding, version: holding.version + 2 };
  return { added: [next, again], holds: again, isTaken: false };
}
