import type { FastifyReply, FastifyRequest } from "fastify";
import { SECURITY_HEADERS } from "../../bundle/contentPolicy";
import { SIGN_MS } from "../../school/wire/liveWire";
import { type AskingInstructor, whoAsks } from "../http/whoAsks";
import type { World } from "../world/world";
import type { LiveHub } from "./liveHub";

/** Bytes that may wait for a board which takes them too slowly; it comes again and hears how all is by then. */
const MOST_WAITING = 1 << 20;

/** The change that a board heard of last, where it heard it from this server; else null. */
function lastHeard({ headers }: FastifyRequest, hub: LiveHub): number | null {
  const [serverId, change] = String(headers["last-event-id"] ?? "").split(":");
  return serverId === hub.id && change !== undefined && /^\d{1,15}$/.test(change) ? Number(change) : null;
}

/**
 * Tells a board what goes on at the benches of a class, by server-sent events (HTML standard, 9.2), until either side ends it.
 * A board whose beginning fails is cut off, so that it comes again: signs of life alone would say that all is well.
 */
export async function streamBoard(
  request: FastifyRequest,
  reply: FastifyReply,
  of: Pick<AskingInstructor, "schoolId"> & { readonly classId: string },
  hub: LiveHub,
  world: World,
): Promise<void> {
  reply.hijack();
  const { raw } = reply;
  // Nothing else comes over this connection: once it is done, a server that stops waits for it no longer.
  raw.shouldKeepAlive = false;
  raw.writeHead(200, {
    ...SECURITY_HEADERS,
    "Content-Type": "text/event-stream",
    "Cache-Control": "no-store",
    // A proxy that gathers answers would hold every event back.
    "X-Accel-Buffering": "no",
  });
  const send = (text: string) => {
    if (raw.writableLength > MOST_WAITING) raw.destroy();
    else if (!raw.writableEnded) raw.write(text);
  };
  // At each sign of life, which a page sees as an event of its own, the instructor must still be signed in.
  const beat = setInterval(async () => {
    send("event: here\ndata: 1\n\n");
    const who = await whoAsks(request, "instructor", world).catch(() => null);
    if (who?.role === "anyone") raw.end();
  }, SIGN_MS).unref();
  let unlisten: () => void = () => undefined;
  raw.on("close", () => {
    clearInterval(beat);
    unlisten();
  });
  try {
    unlisten = await hub.listen(of, lastHeard(request, hub), (event, change) =>
      send(`id: ${hub.id}:${change}\ndata: ${JSON.stringify(event)}\n\n`),
    );
  } catch (error) {
    raw.destroy();
    throw error;
  }
  // It went while the hands were looked up.
  if (raw.destroyed) unlisten();
}
