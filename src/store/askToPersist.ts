/** Where a browser promises not to clear what is kept: `navigator.storage`. */
export interface StorageKeeper {
  readonly persisted: () => Promise<boolean>;
  readonly persist: () => Promise<boolean>;
}

/**
 * Asks the browser to keep the records even when room is short.
 *
 * @param keeper - undefined where the browser knows no such promise
 * @returns whether it promises, and `unknown` where it cannot be asked
 */
export async function askToPersist(keeper: StorageKeeper | undefined): Promise<"kept" | "refused" | "unknown"> {
  if (keeper === undefined) return "unknown";
  try {
    return (await keeper.persisted()) || (await keeper.persist()) ? "kept" : "refused";
  } catch {
    return "unknown";
  }
}
