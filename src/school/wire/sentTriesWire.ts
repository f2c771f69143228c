import * as z from "zod/mini";
import { list, shortText, strict, whole } from "../../lock/fieldSchemas";
import { span } from "../../records/fields";
import { trySchema } from "../../records/sitting/trySchemas";
import { TRY_LIMITS } from "./assignmentsWire";

/** Tries of a sitting as they have ended, each with its motion as a record packs it. */
export const sentTries = strict({
  tries: list(
    strict({
      /** Place in the sitting, from 0. */
      index: whole(0, 7999),
      result: trySchema,
      motion: z.nullable(shortText(TRY_LIMITS.motion)),
      /** How long it has waited since it ended, by the bench's clock. */
      waited_ms: span,
    }),
    1,
    TRY_LIMITS.tries,
  ),
});
