import * as z from "zod/mini";
import { SchoolError } from "../../../school/schoolError";
import { schoolProblem } from "../../../school/schoolWords";
import type { signedIn } from "../../../school/wire/peopleWire";
import type { Problem } from "../../../wording/problem";
import { type Answer, askFile, askServer, type Body, jsonBody, labeledProblem } from "../../school/askServer";

/** Who is signed in, as the server says. */
export type SignedIn = Readonly<z.infer<typeof signedIn>>;

/** Why an instructor does not get what was asked for: sentences, as they stand on a page. */
class Refusal extends SchoolError {
  constructor(problem: Problem) {
    super(problem, "Not done");
  }

  override get message(): string {
    return `${super.message}.`;
  }
}

/** Asks, and gives what was answered. @throws {SchoolError} */
export async function ask<Schema extends z.ZodMiniType>(
  path: string,
  schema: Schema,
  body?: Body,
): Promise<z.output<Schema>> {
  return answered(await askServer(path, schema, body));
}

/** @throws {SchoolError} where it was refused, or nobody answered */
function answered<Value>(answer: Answer<Value>): Value {
  if (answer.kind === "answered") return answer.value;
  throw new Refusal(answer.kind === "refused" ? labeledProblem(answer.problem) : schoolProblem("no-answer", []));
}

/** The server's answer to a change that has nothing to tell. */
const NOTHING = z.null();

/** Asks as the instructor who is signed in. */
export class Asking {
  readonly signedIn: SignedIn;
  private readonly onSignedOut: () => void;

  /** @param onSignedOut - called when the server knows the sign-in no more */
  constructor(signedIn: SignedIn, onSignedOut: () => void) {
    this.signedIn = signedIn;
    this.onSignedOut = onSignedOut;
  }

  private async watched<Value>(asked: Promise<Value>): Promise<Value> {
    try {
      return await asked;
    } catch (error) {
      if (error instanceof SchoolError && error.code === "not-signed-in") this.onSignedOut();
      throw error;
    }
  }

  /** Reads something. @throws {SchoolError} */
  read<Schema extends z.ZodMiniType>(path: string, schema: Schema): Promise<z.output<Schema>> {
    return this.watched(ask(path, schema));
  }

  /** Reads a file. @throws {SchoolError} */
  file(path: string): Promise<Blob> {
    return this.watched(askFile(path).then(answered));
  }

  private put<Schema extends z.ZodMiniType>(path: string, schema: Schema, body: Body): Promise<z.output<Schema>> {
    return this.watched(ask(path, schema, { ...body, headers: { ...body.headers, "x-csrf": this.signedIn.csrf } }));
  }

  /** Changes something, and gives the answer. @throws {SchoolError} */
  change<Schema extends z.ZodMiniType>(path: string, schema: Schema, value?: unknown): Promise<z.output<Schema>> {
    return this.put(path, schema, value === undefined ? { bytes: "", headers: {} } : jsonBody(value));
  }

  /** Puts something in the place of what is there, and gives the answer. @throws {SchoolError} */
  replace<Schema extends z.ZodMiniType>(path: string, schema: Schema, value: unknown): Promise<z.output<Schema>> {
    return this.put(path, schema, { ...jsonBody(value), method: "PUT" });
  }

  /** Changes something that has no answer but that it is done. @throws {SchoolError} */
  async act(path: string, value?: unknown): Promise<void> {
    await this.change(path, NOTHING, value);
  }
}
