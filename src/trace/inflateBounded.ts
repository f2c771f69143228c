import { inflateSync } from "fflate";
import { TraceError } from "./traceError";
import { traceProblem } from "./traceWords";

/** Bytes that deflated ones take at most, more than what they stand for: 9 bits for each byte, and the head of a block. */
const longestFor = (unpacked_bytes: number) => 1.125 * unpacked_bytes + 64;

/**
 * Unpacks deflated bytes (RFC 1951) into no more room than allowed: a few bytes can stand for gigabytes.
 *
 * @param packed - whatever came from outside
 * @param most_bytes - room that the unpacked bytes may take; it is taken from the beginning
 * @throws {TraceError} `unpacks-to-more` when they would take more, `ends-too-soon` when there is nothing to unpack
 * @throws {Error} when they are damaged
 */
export function inflateBounded(packed: Uint8Array, most_bytes: number): Uint8Array {
  const tooMuch = () => new TraceError(traceProblem("unpacks-to-more", [], { most: most_bytes }));
  if (packed.length === 0) throw new TraceError(traceProblem("ends-too-soon", []));
  // Whatever does not fit is unpacked to the end and dropped, which takes time by the length of what is packed.
  if (packed.length > longestFor(most_bytes)) throw tooMuch();
  const unpacked = inflateSync(packed, { out: new Uint8Array(most_bytes + 1) });
  if (unpacked.length > most_bytes) throw tooMuch();
  return unpacked;
}
