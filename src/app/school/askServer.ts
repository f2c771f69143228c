import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { SCHOOL_WORDS, schoolProblem } from "../../school/schoolWords";
import { problemAnswer } from "../../school/wire/problemWire";
import type { Problem } from "../../wording/problem";
import { classServer } from "../parts/page/classServer";

/** How long an answer may take, ms. */
const PATIENCE_MS = 30_000;
/** How long a file may take: all records of a class. */
const FILE_PATIENCE_MS = 600_000;

/** What a class server answered: what was asked for, or a problem. */
export type Answer<Value> =
  | { readonly kind: "answered"; readonly value: Value }
  | { readonly kind: "refused"; readonly status: number; readonly problem: Problem }
  /** Nobody answered: no network, or no server. */
  | { readonly kind: "silent" };

/** A body ready to be sent. */
export interface Body {
  readonly bytes: BodyInit;
  readonly headers: Readonly<Record<string, string>>;
  /** How it is sent, where not by POST. */
  readonly method?: "PUT";
}

/** Plain JSON. */
export const jsonBody = (value: unknown): Body => ({
  bytes: JSON.stringify(value),
  headers: { "content-type": "application/json" },
});

const isKnown = (code: string): code is keyof typeof SCHOOL_WORDS => Object.hasOwn(SCHOOL_WORDS, code);

/** A problem that this version knows words for. A newer server may have others. */
function knownProblem(answer: unknown): Problem {
  const read = problemAnswer.safeParse(answer);
  const problem = read.success && isKnown(read.data.problem.code) ? read.data.problem : null;
  return (problem as Problem | null) ?? schoolProblem("server-failed", []);
}

const send = (path: string, patience_ms: number, body?: Body): Promise<Response> =>
  fetch(`${classServer() ?? ""}${path}`, {
    ...(body !== undefined && { method: body.method ?? "POST", body: body.bytes, headers: body.headers }),
    credentials: "same-origin",
    cache: "no-store",
    signal: AbortSignal.timeout(patience_ms),
  });

/**
 * Asks the class server. Never throws for a reason of network or server.
 *
 * @param path - below its address, such as "/bench"
 */
export async function askServer<Schema extends z.ZodMiniType>(
  path: string,
  answer: Schema,
  body?: Body,
): Promise<Answer<z.output<Schema>>> {
  try {
    const response = await send(path, PATIENCE_MS, body);
    const text = await response.text();
    const told: unknown = text === "" ? null : JSON.parse(text);
    if (!response.ok) return { kind: "refused", status: response.status, problem: knownProblem(told) };
    const read = answer.safeParse(told);
    if (read.success) return { kind: "answered", value: read.data };
    return { kind: "refused", status: 500, problem: schoolProblem("server-failed", []) };
  } catch {
    // A proxy or a login page of the network answers too, and not in our terms: the same as nobody.
    return { kind: "silent" };
  }
}

/** Asks the class server for a file, which may be large. Never throws for a reason of network or server. */
export async function askFile(path: string): Promise<Answer<Blob>> {
  try {
    const response = await send(path, FILE_PATIENCE_MS);
    if (response.ok) return { kind: "answered", value: await response.blob() };
    return { kind: "refused", status: response.status, problem: knownProblem(await response.json()) };
  } catch {
    return { kind: "silent" };
  }
}

/** Fields as the labels of their forms call them. */
const FIELDS: Readonly<Record<string, string>> = {
  attempts: "the number of attempts",
  bench: "the name of this bench",
  code: "the code",
  extraTime: "the extra time",
  from: "the beginning",
  login: "the sign-in name",
  name: "the name",
  password: "the password",
  pin: "the PIN",
  school: "the name of the school",
  text: "the comment",
  until: "the end",
};

/** A problem with a field of a form, with the field's label; a sentence of its own about one says it itself. */
export function labeledProblem(problem: Problem): Problem {
  const [field, ...deeper] = problem.path;
  // Nobody types the secret of a link or a card: it was cut off on the way.
  if (field === "token") return schoolProblem("address-cut", []);
  if (deeper.length > 0) return problem;
  if (isKnown(problem.code) && SCHOOL_WORDS[problem.code].startsWith(": ")) return { ...problem, path: [] };
  const label = FIELDS[String(field)];
  return label === undefined ? problem : { ...problem, path: [label] };
}

/** What is wrong, in words that go on from a colon; without their period. */
export const problemWords = (problem: Problem): string => new SchoolError(labeledProblem(problem)).says;
