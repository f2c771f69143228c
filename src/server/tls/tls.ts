import { readFile } from "node:fs/promises";
import { createSecureContext } from "node:tls";
import { errorText } from "../../wording/problem";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";

/** What a server shows of itself on https. */
export interface Tls {
  /** PEM: its certificate, and those between it and an authority. */
  readonly cert: string;
  /** PEM. */
  readonly key: string;
  /** The school's own authority, which devices must be told to trust; null where the certificate is from elsewhere. */
  readonly authority: Authority | null;
}

/** An authority of the school's own. */
export interface Authority {
  /** Where its certificate lies, to be brought to each device. */
  readonly file: string;
  /** PEM. */
  readonly certificate: string;
  /** SHA-256, as devices show it: pairs of hexadecimal digits with colons between. */
  readonly fingerprint: string;
}

/** Which certificate the operator asked for. */
export type TlsChoice = "own" | { readonly certificate: string; readonly key: string };

/** A certificate and a key that the operator has. @throws {ServerError} "tls-not-read", "tls-not-good" */
export async function givenTls({ certificate, key }: Exclude<TlsChoice, "own">): Promise<Tls> {
  const read = (file: string) =>
    readFile(file, "utf8").catch((error: unknown) => {
      throw new ServerError(serverProblem("tls-not-read", [], { file, why: errorText(error) }));
    });
  const tls = { cert: await read(certificate), key: await read(key), authority: null };
  try {
    createSecureContext({ cert: tls.cert, key: tls.key });
  } catch (error) {
    throw new ServerError(serverProblem("tls-not-good", [], { certificate, key, why: errorText(error) }));
  }
  return tls;
}
