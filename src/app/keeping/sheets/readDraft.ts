import * as z from "zod/mini";
import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import { parseProfile } from "../../../lock/profileSchema";
import { messageOf } from "../../parts/page/messageOf";

const object = z.looseObject({});
const isProfile = (value: unknown): boolean => {
  try {
    parseProfile(value);
    return true;
  } catch {
    return false;
  }
};

const anyStation = {
  id: z.string(),
  title: z.optional(z.string()),
  task: z.optional(z.string()),
  profile: z.union([z.string(), z.custom((value) => isProfile(value))]),
  help: z.enum(["full", "counts", "silent"]),
  conditions: z.optional(z.array(z.looseObject({ kind: z.string() }))),
  passMarks: z.looseObject({ claim: z.optional(object) }),
};

const policy = z.discriminatedUnion("policy", [
  z.looseObject({ policy: z.literal("as-set") }),
  z.looseObject({ policy: z.literal("drawn"), rules: z.optional(object) }),
  z.looseObject({ policy: z.literal("fixed"), list: z.array(z.array(z.nullable(z.number()))) }),
]);

/** Enough of a sheet's shape for the editor to show it; what its numbers and texts are worth `parseSheet` tells. */
const draftSchema = z.looseObject({
  format: z.literal("gatefall-sheet"),
  version: z.literal(1),
  title: z.string(),
  purpose: z.string(),
  instructions: z.optional(z.array(z.string())),
  cautions: z.optional(z.array(z.string())),
  order: z.enum(["blocked", "interleaved", "random"]),
  stations: z.array(
    z.discriminatedUnion("kind", [
      z.looseObject({ kind: z.literal("dialing"), ...anyStation, combinations: policy }),
      z.looseObject({ kind: z.literal("zeroing"), ...anyStation }),
      z.looseObject({ kind: z.literal("change"), ...anyStation, combinations: policy }),
      z.looseObject({ kind: z.literal("trouble"), ...anyStation, pool: z.optional(z.array(z.string())) }),
      z.looseObject({
        kind: z.literal("handover"),
        ...anyStation,
        hand: z.enum(["real", "simulated"]),
        fit: z.optional(z.literal("first")),
      }),
      z.looseObject({ kind: z.literal("fitting"), ...anyStation }),
      z.looseObject({ kind: z.literal("service"), ...anyStation }),
      z.looseObject({ kind: z.literal("inspection"), ...anyStation }),
    ]),
  ),
  sitting: z.optional(
    z.looseObject({
      questions: z.optional(z.looseObject({ topics: z.array(z.looseObject({ topic: z.string() })) })),
    }),
  ),
});

/**
 * A kept sheet, which may be half done.
 *
 * @param body - as it was kept; anything at all where it came with an imported logbook
 * @returns the sheet, sound or not, or a sentence where it is none
 */
export function readDraft(body: unknown): Sheet | string {
  if (draftSchema.safeParse(body).success) return body as Sheet;
  try {
    return parseSheet(body);
  } catch (error) {
    return messageOf(error);
  }
}

/** A sheet as it is kept: plain JSON. */
export function draftBody(sheet: Sheet): unknown {
  return JSON.parse(JSON.stringify(sheet));
}
