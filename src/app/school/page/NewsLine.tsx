import { type BenchNews, newsSentence } from "../../../school/people/benchNews";
import { Button } from "../../parts/controls/Button";
import { shownName } from "../../parts/shownName";

interface NewsProps {
  readonly news: readonly BenchNews[];
  readonly onRead: () => void;
}

/** The same with names as they are shown. */
const shownNews = (one: BenchNews): BenchNews => ({
  ...one,
  ...("name" in one && { name: shownName(one.name) }),
  ...("before" in one && { before: shownName(one.before) }),
  ...("class" in one && { class: shownName(one.class) }),
});

const wantsJoining = ({ kind }: BenchNews) => kind === "signed-out" || kind === "left";

/** What has changed at the class since this bench last asked, until it is read. */
export function NewsLine({ news, onRead }: NewsProps) {
  return (
    <div role="status" className="print:hidden">
      {news.length > 0 && (
        <div className="notice row gap-x-4 mx-5 my-2 text-small wrap-anywhere">
          {news.map((one) => (
            <p key={newsSentence(one)}>{newsSentence(shownNews(one))}</p>
          ))}
          {news.some(wantsJoining) && <a href="#/join">Join again</a>}
          <Button className="slim" aria-label="Close this message" onClick={onRead}>
            Close
          </Button>
        </div>
      )}
    </div>
  );
}
