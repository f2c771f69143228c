import type { FollowTask, PictureTask, SettleTask } from "./followMessages";

/** What of a web worker is used. */
type FollowingWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

/** Follows a dial beside the page, one picture at a time. Each picture has one answer. */
export class DialFollower<Answer, Task extends PictureTask = FollowTask> {
  /** Whether a picture is being looked at: another would wait. */
  isBusy = false;
  private readonly worker: FollowingWorker;

  /** @param tell - hears of every picture @param fail - hears that nothing more will come */
  constructor(worker: FollowingWorker, tell: (answer: Answer) => void, fail: () => void) {
    this.worker = worker;
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      this.isBusy = false;
      tell(data);
    };
    worker.onerror = fail;
  }

  /** Hands a picture over: it is gone here. */
  look(task: Task): void {
    this.isBusy = true;
    this.worker.postMessage(task, [task.image.data.buffer]);
  }

  /** Turns are no longer in doubt. */
  settle(): void {
    this.worker.postMessage(SETTLE);
  }

  end(): void {
    this.worker.terminate();
  }
}

const SETTLE = { kind: "settle" } satisfies SettleTask;
