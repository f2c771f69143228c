import { WordLink } from "../../../words/WordLink";
import { WordsHere } from "../../../words/WordsHere";

/** The heading over the checks of a fit, with the words that one meets in them. */
export const ChecksHead = () => (
  <div className="spread">
    <h2 tabIndex={-1}>Checks</h2>
    <WordsHere>
      <WordLink word="end-play">end play</WordLink>
      <WordLink word="ring-off-center">off center</WordLink>
      <WordLink word="parallax">parallax</WordLink>
    </WordsHere>
  </div>
);
