/** What is said of a record that does not check, above what is wrong with it. */
export const FAILS_CHECK = "This record fails its check. Do not count it.";

/** How far any check of a file goes. */
export const CHECK_LIMIT =
  "A hash is not a signature. It shows a change by accident, or by someone who does not change the hash as well. Someone who knows this program can make up a whole record: compare the hash with the print from that day.";
