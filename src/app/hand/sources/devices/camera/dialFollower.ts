import type { GrayImage } from "../../../../../realdial/image/grayImage";
import type { FollowAnswer, FollowTask } from "./followMessages";

/** What of a web worker is used. */
export type FollowingWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

const newWorker = (): FollowingWorker =>
  new Worker(new URL("./dialFollower.worker.ts", import.meta.url), { type: "module" });

/** Follows the printed dial beside the page, one frame at a time. */
export class DialFollower {
  /** Whether a frame is being looked at: another would wait. */
  isBusy = false;
  private readonly worker: FollowingWorker;

  /** @param tell - hears of every frame @param fail - hears that nothing more will come */
  constructor(tell: (answer: FollowAnswer) => void, fail: () => void, startWorker = newWorker) {
    this.worker = startWorker();
    this.worker.onmessage = ({ data }: MessageEvent<FollowAnswer>) => {
      this.isBusy = false;
      tell(data);
    };
    this.worker.onerror = fail;
  }

  /** @param at - capture time, ms, later than the last */
  follow(image: GrayImage, at: number): void {
    this.isBusy = true;
    const task: FollowTask = { kind: "frame", image, at };
    this.worker.postMessage(task, [image.data.buffer]);
  }

  /** Turns are no longer in doubt. */
  settle(): void {
    const task: FollowTask = { kind: "settle" };
    this.worker.postMessage(task);
  }

  end(): void {
    this.worker.terminate();
  }
}
