import type { RecordCheck } from "../../src/records/sitting/checkRecord";
import { checkSentences } from "../../src/records/sitting/checkWords";

/** What checking a record came to, in the sentences that a person reads. */
export const checkedInWords = (check: RecordCheck) => ({
  ...check,
  problems: checkSentences(check.problems),
  unheld: checkSentences(check.unheld),
  unchecked: checkSentences(check.unchecked),
});
