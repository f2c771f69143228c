import * as z from "zod/mini";
import { flag, oneOf, shortList, within } from "../../lock/fieldSchemas";
import type { SourceDescription } from "./sourceDescription";
import { SOURCE_KINDS } from "./sourceKinds";
import { MOST_SOURCES } from "./sourcesSeen";

/** A turn of the largest dial: no step is larger, graduations. */
const LARGEST = 1000;
const size = within(0, LARGEST, "graduations");

/** What turned a dial, from outside. What a later version adds is passed over. */
const sourceSchema = z.object({
  kind: oneOf(SOURCE_KINDS),
  resolution: size,
  noise: z.nullable(size),
  isCoarse: flag,
  keepsNoMotion: z.optional(flag),
}) satisfies z.ZodMiniType<SourceDescription>;

/** What turned the dial of one attempt, each source once; left out where the hands on the screen alone did. */
export const sourcesSchema = z.optional(shortList(sourceSchema, MOST_SOURCES));
