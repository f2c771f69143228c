import { type ReaderOrder, readAndTell } from "./readerMessages";

addEventListener("message", ({ data }: MessageEvent<ReaderOrder>) => {
  readAndTell(data, (message) => postMessage(message));
});
