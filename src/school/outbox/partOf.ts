/** What one part holds at most. */
export interface PartRoom {
  readonly records: number;
  readonly bytes: number;
}

/** The first of what waits that go into one part together; one that is larger than a part goes alone. */
export function partOf<One extends { readonly bytes: number }>(
  waiting: readonly One[],
  room: PartRoom,
): readonly One[] {
  let bytes = 0;
  const end = waiting.findIndex((one, k) => {
    bytes += one.bytes;
    return k > 0 && (k >= room.records || bytes > room.bytes);
  });
  return end < 0 ? waiting : waiting.slice(0, end);
}
