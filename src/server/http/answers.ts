import type { FastifyError, FastifyReply, FastifyRequest } from "fastify";
import { answerStatus } from "../../school/answerStatus";
import { schoolProblem } from "../../school/schoolWords";
import type { Problem, ProblemError } from "../../wording/problem";
import { isAway } from "../database/isAway";
import type { FieldsWrong } from "./checkFields";

/** Too large a body has an error of the framework's own. */
const FRAMEWORK: Readonly<Record<string, Problem>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: schoolProblem("too-large", []),
};

/** No database of ours stores the character NUL in a text (PostgreSQL documentation, appendix A). */
const CANNOT_BE_STORED = "22021";

function problemOf(error: FastifyError | ProblemError | FieldsWrong): Problem {
  if ("problem" in error) return error.problem;
  if (isAway(error)) return schoolProblem("try-again", []);
  if (error.code === CANNOT_BE_STORED) return schoolProblem("not-text", []);
  const { code, statusCode = 500 } = error;
  return (
    FRAMEWORK[code] ??
    (statusCode < 500 ? { code: "invalid", path: [], values: {} } : schoolProblem("server-failed", []))
  );
}

/** Answers with what is wrong, as data. What went wrong inside the server is in its log, never in the answer. */
export function answerError(
  error: FastifyError | ProblemError | FieldsWrong,
  request: FastifyRequest,
  reply: FastifyReply,
): void {
  const problem = problemOf(error);
  const status = answerStatus(problem.code);
  // A database that is away is told to everyone who asks; a line for each would fill a disk.
  if (status >= 500 && problem.code !== "try-again") request.log.error({ err: error }, "a request failed");
  void reply.status(status).send({ problem });
}
