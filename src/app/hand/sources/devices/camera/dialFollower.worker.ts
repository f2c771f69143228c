import { PrintedDial } from "../../../../../realdial/printed/printedDial";
import type { FollowAnswer, FollowTask, SettleTask } from "./followMessages";

/** Sightings are in hundredths of a turn, whatever the disc shows. */
const dial = new PrintedDial(100);
let position: number | null = null;

addEventListener("message", ({ data }: MessageEvent<FollowTask | SettleTask>) => {
  if (data.kind === "settle") {
    if (position !== null) dial.setTo(position);
    return;
  }
  const from = performance.now();
  const sighting = dial.follow(data.image, data.at);
  position = sighting.position;
  const answer: FollowAnswer = { sighting, took: performance.now() - from };
  postMessage(answer);
});
