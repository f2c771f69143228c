import * as z from "zod/mini";

/** Every answer that is a refusal: what is wrong, as data. */
export const problemAnswer = z.object({
  problem: z.object({
    code: z.string(),
    path: z.array(z.union([z.string(), z.number()])),
    values: z.record(z.string(), z.unknown()),
  }),
});
