import { useEffect, useRef, useState } from "react";
import { clockText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { ToldLine, useDoing } from "../../parts/Told";
import type { ClassProps } from "../asking/classProps";
import { BoardTable } from "./BoardTable";
import { BoardNews } from "./boardNews";
import type { BoardRow } from "./boardRows";
import type { BoardStream } from "./boardStream";
import { summaryWords, whoWords } from "./boardWords";
import { useBoard } from "./useBoard";
import { WatchedBench } from "./WatchedBench";

/** Whether what is shown is how it is now. */
function LiveLine({ stream }: { readonly stream: BoardStream }) {
  const { isLive, lostAt } = stream;
  if (isLive) return <p role="status">Live: this page shows every change as it comes.</p>;
  return (
    <p role="status" className={lostAt === null ? "" : "notice"}>
      {lostAt === null
        ? "Connecting to the class server."
        : `Not live since ${clockText(lostAt)}: the class server does not answer. What you see is from then. This page connects again by itself.`}
    </p>
  );
}

/** What is said aloud. */
function useNews(rows: readonly BoardRow[], now: number): string {
  const news = useRef(new BoardNews());
  const [text, setText] = useState("");
  useEffect(() => {
    if (rows.length === 0) return;
    const next = news.current.next(rows, now);
    if (next !== null) setText(next);
  }, [rows, now]);
  return text;
}

/** Every bench of a class as it is now: who works there, on what, how it went last, and who needs help. */
export function BoardPanel({ asking, one }: ClassProps) {
  const { stream, rows, now, problem } = useBoard(asking, one.id);
  const [watched, setWatched] = useState<string | null>(null);
  const { told, act } = useDoing();
  const said = useNews(rows, now);
  const row = rows.find(({ bench }) => bench.deviceId === watched);
  const lower = (of: BoardRow) =>
    act(async () => {
      await asking.act(`/classes/${one.id}/live/${encodeURIComponent(of.bench.deviceId)}/lower-hand`);
      return `The hand of ${whoWords(of)} is down.`;
    });
  return (
    <section className="stack gap-4" aria-labelledby="class-board">
      <h2 id="class-board">Live board</h2>
      <LiveLine stream={stream} />
      <p className="visually-hidden" role="status">
        {said}
      </p>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {row !== undefined && (
        <WatchedBench
          key={row.bench.deviceId}
          asking={asking}
          classId={one.id}
          row={row}
          onClose={() => setWatched(null)}
        />
      )}
      {stream.isLive && rows.length === 0 && (
        <p>No bench is here. A bench comes onto this board when somebody joins the class there and its page is open.</p>
      )}
      {rows.length > 0 && (
        <>
          <p>{summaryWords(rows)}</p>
          <BoardTable {...{ rows, now, watched }} onWatch={setWatched} onLower={lower} />
        </>
      )}
      <ToldLine told={told} />
    </section>
  );
}
