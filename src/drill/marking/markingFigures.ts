import type { Mark, Marking } from "./markSitting";

/** One mark without its words: what is asked, as a number, and what it came to. */
const markFigures = ({ criterion, verdict, value }: Mark) => {
  const { kind, station, limit, of, claim } = criterion;
  return { kind, station, limit, of, claim: claim ?? null, verdict, value };
};

/** What a sitting's marks say, without the words they say it in: the words may change from version to version. */
export const markingFigures = ({ verdict, marks }: Marking) => ({ verdict, marks: marks.map(markFigures) });
