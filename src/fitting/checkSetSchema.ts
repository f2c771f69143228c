import * as z from "zod/mini";
import { CHECK_SET } from "./fitChecks";

/** Which checks there were, from outside; left out for the first set. */
export const checkSetSchema = z.optional(z.literal(CHECK_SET));
