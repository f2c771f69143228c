import { type CountTask, countOf } from "./countMessages";

addEventListener("message", ({ data }: MessageEvent<CountTask>) => {
  postMessage(countOf(data));
});
