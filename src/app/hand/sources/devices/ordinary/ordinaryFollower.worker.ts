import { OrdinaryDial } from "../../../../../realdial/ordinary/ordinaryDial";
import type { SettleTask } from "../camera/followMessages";
import type { OrdinaryAnswer, OrdinaryTask } from "./ordinaryMessages";

const dial = new OrdinaryDial();

const look = (task: OrdinaryTask) =>
  task.kind === "find" ? dial.find(task.image, task.taps, task.graduations) : dial.take(task.image, task.at);

addEventListener("message", ({ data }: MessageEvent<OrdinaryTask | SettleTask>) => {
  if (data.kind === "settle") return dial.settle();
  const from = performance.now();
  const seen = look(data);
  const answer: OrdinaryAnswer = { seen, took: performance.now() - from };
  postMessage(answer);
});
