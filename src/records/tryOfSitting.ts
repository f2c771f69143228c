import type { ZeroingRecord } from "./records";

/** Id of the record of a sitting's try. @param index - of the try in the sitting, from 0 */
export const tryId = (sittingId: string, index: number): string => `${sittingId}:${index + 1}`;

/** Whether a record is that of a sitting's try, by its id. */
export const isTryOfSitting = ({ id }: { readonly id: string }): boolean => /:\d+$/.test(id);

/** The sitting that a zeroing is a try of, as its details tell. */
export function sittingOf({ details }: ZeroingRecord): string | undefined {
  const found =
    typeof details === "object" && details !== null && "sittingId" in details ? details.sittingId : undefined;
  return typeof found === "string" ? found : undefined;
}
