import { sha256Hex } from "../drill/sha256";
import type { Sha256 } from "./sitting/sittingRecord";

/** SHA-256 that every page can make, whatever its address. */
export const asyncSha256: Sha256 = async (text) => sha256Hex(text);
