import { readAndTell } from "./readerMessages";

addEventListener("message", ({ data }: MessageEvent<Blob>) => {
  readAndTell(data, (message) => postMessage(message));
});
