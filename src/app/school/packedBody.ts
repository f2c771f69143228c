import { gzipSync } from "fflate";
import type { Body } from "./askServer";

async function gzip(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  if (globalThis.CompressionStream === undefined) return new Uint8Array(gzipSync(bytes));
  const packed = new Blob([bytes]).stream().pipeThrough(new CompressionStream("gzip"));
  return new Uint8Array(await new Response(packed).arrayBuffer());
}

/** JSON, compressed. */
export async function packedBody(value: unknown): Promise<Body> {
  return {
    bytes: await gzip(new TextEncoder().encode(JSON.stringify(value))),
    headers: { "content-type": "application/json", "content-encoding": "gzip" },
  };
}
