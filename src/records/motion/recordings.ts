import * as z from "zod/mini";
import { shortList, shortText } from "../../lock/fieldSchemas";

/** A packed motion, base64: some minutes of dialing are a few thousand characters. */
const recording = z.nullable(shortText(4_000_000));

/** The motion of every try of a sitting, null where there is none. */
export const recordings = shortList(recording, 8000);
