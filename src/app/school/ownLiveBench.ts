import { lastEnded } from "../../store/outbox/lastEnded";
import { classServer } from "../parts/page/classServer";
import { newId } from "../parts/page/newId";
import { LiveBench } from "./live/liveBench";
import { workHere } from "./live/workHere";
import { pathNow } from "./page/pagePath";
import type { SchoolBench } from "./schoolBench";

/** Where the class server hears benches. */
function address(): URL {
  const url = new URL(`${classServer() ?? ""}/bench/live`, location.href);
  url.protocol = url.protocol === "https:" ? "wss:" : "ws:";
  url.hash = "";
  return url;
}

/** This page as a bench that tells its class how it goes. It begins at once, and goes by what the page hears. */
export function ownLiveBench(bench: SchoolBench): LiveBench {
  const { current, sender } = bench;
  const live = new LiveBench({
    open: () => new WebSocket(address()),
    now: () => performance.now(),
    chance: Math.random,
    later: (act, wait_ms) => {
      const timer = setTimeout(act, wait_ms);
      return () => clearTimeout(timer);
    },
    joining: () => bench.joining,
    work: () => workHere(pathNow()),
    last: async (personId) => (await lastEnded(current.logbook, personId)) ?? undefined,
    unsent: () => sender.state.waiting,
    isHidden: () => document.visibilityState === "hidden",
    newId,
    wall: Date.now,
  });
  const nudge = () => live.nudge();
  addEventListener("online", nudge);
  // Another tab of this bench may have taken the connection: it belongs to the one that is worked in.
  addEventListener("focus", nudge);
  document.addEventListener("visibilitychange", nudge);
  addEventListener("pagehide", () => live.end());
  addEventListener("pageshow", nudge);
  current.subscribe(() => void live.lookAtLast());
  bench.subscribe(() => live.wake());
  live.wake();
  return live;
}
