import type { FastifySchemaCompiler } from "fastify";
import type * as z from "zod/mini";
import { fieldProblem } from "../../lock/fieldProblem";
import type { Problem } from "../../wording/problem";

/** What the framework hands on to `answerError`: it writes fields of its own into it, so it is no error of ours. */
export type FieldsWrong = Error & { readonly problem: Problem };

/** Fields whose value is never sent back, not even to whoever sent it: an answer may be kept somewhere on its way. */
const SECRET: readonly PropertyKey[] = ["password", "pin", "token", "card"];

/** A problem without what was found there, where that is a secret. */
function withoutSecret(problem: Problem): Problem {
  if (!problem.path.some((key) => SECRET.includes(key))) return problem;
  const { found: _found, ...values } = problem.values;
  return { ...problem, values };
}

/** Checks what was sent by its schema, and tells the first field that is wrong as a problem. */
export const checkFields: FastifySchemaCompiler<z.ZodMiniType> =
  ({ schema }) =>
  (sent: unknown) => {
    const { success, data, error } = schema.safeParse(sent);
    if (success) return { value: data };
    const wrong: FieldsWrong = Object.assign(new Error("a field is wrong"), {
      problem: withoutSecret(fieldProblem(error.issues, sent)),
    });
    return { error: wrong };
  };
