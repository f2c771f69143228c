import { Inflate } from "fflate";
import { TraceError } from "./traceError";
import { traceProblem } from "./traceWords";

/** Packed bytes taken at a time: deflate grows at most about a thousandfold, so a step gives at most 1 MB. */
const SLICE = 1024;

/**
 * Unpacks deflated bytes (RFC 1951) in steps, and gives up before they fill more room than allowed: a few bytes can stand
 * for gigabytes.
 *
 * @param packed - whatever came from outside
 * @param most_bytes - room that the unpacked bytes may take
 * @throws {TraceError} `unpacks-to-more` when they would take more, `ends-too-soon` when their end is missing
 * @throws {Error} when they are damaged
 */
export function inflateBounded(packed: Uint8Array, most_bytes: number): Uint8Array {
  const chunks: Uint8Array[] = [];
  let size = 0;
  let isWhole = false;
  const inflate = new Inflate((chunk, isLast) => {
    size += chunk.length;
    if (size > most_bytes) throw new TraceError(traceProblem("unpacks-to-more", [], { most: most_bytes }));
    chunks.push(chunk);
    isWhole = isLast;
  });
  for (let at = 0; at < packed.length; at += SLICE) {
    inflate.push(packed.subarray(at, at + SLICE), at + SLICE >= packed.length);
  }
  if (!isWhole) throw new TraceError(traceProblem("ends-too-soon", []));
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
