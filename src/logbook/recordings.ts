import type { Recordings } from "../drill/record/replayedTries";
import { fromBase64 } from "./base64";
import { decodeTrace } from "./traceCodec";

/** Reads the motions that a sitting's record brings along. */
export const RECORDINGS: Recordings = { read: (packed) => decodeTrace(fromBase64(packed)) };
