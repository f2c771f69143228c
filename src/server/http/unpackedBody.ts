import { Readable } from "node:stream";
import { promisify } from "node:util";
import { gunzip } from "node:zlib";
import type { FastifyRequest, preParsingAsyncHookHandler, RequestPayload } from "fastify";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";

const unzip = promisify<Uint8Array, { maxOutputLength: number }, Buffer>(gunzip);

/** The bytes of a body, up to a bound. @throws {SchoolError} "too-large" */
async function bytesOf(payload: RequestPayload, most: number): Promise<Buffer> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of payload) {
    const bytes = Buffer.from(piece);
    length += bytes.length;
    if (length > most) throw new SchoolError(schoolProblem("too-large", []));
    pieces.push(bytes);
  }
  return Buffer.concat(pieces);
}

async function unpacked(packed: Buffer, most: number): Promise<Buffer> {
  try {
    return await unzip(packed, { maxOutputLength: most });
  } catch (error) {
    const isBomb = error instanceof Error && "code" in error && error.code === "ERR_BUFFER_TOO_LARGE";
    throw new SchoolError(schoolProblem(isBomb ? "too-large" : "not-compressed-so", []));
  }
}

/**
 * Unpacks a body that was sent as gzip, into no more room than allowed: a few bytes can stand for gigabytes.
 *
 * @param most - bytes of the body, packed and unpacked
 * @returns a hook that throws a SchoolError, "too-large" or "not-compressed-so"
 */
export const unpacksBody =
  (most: number): preParsingAsyncHookHandler =>
  async (request: FastifyRequest, _reply, payload) => {
    const encoding = request.headers["content-encoding"]?.trim().toLowerCase() ?? "identity";
    if (encoding === "identity") return payload;
    if (encoding !== "gzip") throw new SchoolError(schoolProblem("not-compressed-so", []));
    const packed = await bytesOf(payload, most);
    const body = Readable.from([await unpacked(packed, most)]);
    return Object.assign(body, { receivedEncodedLength: packed.length });
  };
