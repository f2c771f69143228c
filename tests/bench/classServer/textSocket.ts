import { once } from "node:events";
import { type IncomingMessage, request } from "node:http";
import type { Socket } from "node:net";

/** Frame of a text that is whole, masked by zeros: RFC 6455, 5.2. */
function frame(text: string): Buffer {
  const body = Buffer.from(text);
  const head = body.length < 126 ? Buffer.alloc(6) : Buffer.alloc(8);
  head[0] = 0x81;
  if (body.length < 126) head[1] = 0x80 | body.length;
  else {
    head[1] = 0x80 | 126;
    head.writeUInt16BE(body.length, 2);
  }
  return Buffer.concat([head, body]);
}

/** One end of a WebSocket that says texts of less than 64 kB, and hears nothing: as little work for whoever measures as can be. */
export interface TextSocket {
  readonly say: (text: string) => void;
  readonly end: () => void;
  /** Whether the other end has closed it. */
  readonly isClosed: () => boolean;
}

/** Connects to a server. @param url - "http://..." */
export async function textSocket(url: string, cookie: string): Promise<TextSocket> {
  const handshake = { "sec-websocket-version": "13", "sec-websocket-key": "AAAAAAAAAAAAAAAAAAAAAA==" };
  const asked = request(url, { headers: { connection: "Upgrade", upgrade: "websocket", cookie, ...handshake } });
  asked.end();
  const [, socket] = (await once(asked, "upgrade")) as [IncomingMessage, Socket];
  let isClosed = false;
  socket.on("close", () => {
    isClosed = true;
  });
  socket.on("error", () => undefined).resume();
  return { say: (text) => socket.write(frame(text)), end: () => socket.destroy(), isClosed: () => isClosed };
}
