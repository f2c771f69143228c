import { fromBase64 } from "./file/base64";
import { decodeTrace } from "./motion/traceCodec";
import type { Recordings } from "./sitting/replayedTries";

/** Reads the motions that a sitting's record brings along. */
export const RECORDINGS: Recordings = { read: (packed) => decodeTrace(fromBase64(packed)) };
