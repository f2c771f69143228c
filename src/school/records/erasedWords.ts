import type { STAYS_OF_ERASED } from "../wire/recordsWire";

/** What stays of a person whose data was erased, and why: a sentence each. */
export const ERASED_WORDS: Readonly<Record<(typeof STAYS_OF_ERASED)[number], string>> = {
  chain:
    "The chain keeps the ids, times and hashes of the records, so that it can still be checked. Nobody can read a record from its hash. Whoever still has a copy of one can show that it is the same.",
  backups: "Backups that were made before still have everything. Delete those that you no longer need.",
  files: "Files that were saved or handed out, signed ones too, are where somebody put them.",
  benches: "Benches keep their own copies until somebody deletes the person there. The server takes none of it again.",
};
