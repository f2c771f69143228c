/** Revision of what takes the place of a record: one more than either was written. */
export const nextRevision = (
  before: { readonly revision?: number | undefined } | undefined,
  after: { readonly revision?: number | undefined },
): number => Math.max(before?.revision ?? 0, after.revision ?? 0) + 1;
