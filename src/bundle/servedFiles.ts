import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import type { OutgoingHttpHeaders } from "node:http";
import { extname, join, normalize } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, gzip, constants as zlib } from "node:zlib";

/** Types of what a build consists of, and whether text saves anything by being compressed. */
const TYPES: Readonly<Record<string, { readonly type: string; readonly isText: boolean }>> = {
  ".html": { type: "text/html; charset=utf-8", isText: true },
  ".js": { type: "text/javascript; charset=utf-8", isText: true },
  ".css": { type: "text/css; charset=utf-8", isText: true },
  ".svg": { type: "image/svg+xml", isText: true },
  ".txt": { type: "text/plain; charset=utf-8", isText: true },
  ".webmanifest": { type: "application/manifest+json", isText: true },
  ".png": { type: "image/png", isText: false },
  ".woff2": { type: "font/woff2", isText: false },
  ".woff": { type: "font/woff", isText: false },
};

const YEAR_S = 365 * 24 * 3600;
const FOR_GOOD = `public, max-age=${YEAR_S}, immutable`;
const ASK_EACH_TIME = "no-cache";

type Coding = "br" | "gzip" | "identity";

const brotli = promisify(brotliCompress);
const zip = promisify(gzip);

const CODED: Readonly<Record<Coding, (text: Buffer) => Promise<Buffer>>> = {
  br: (text) => brotli(text, { params: { [zlib.BROTLI_PARAM_QUALITY]: 5 } }),
  gzip: (text) => zip(text),
  identity: async (text) => text,
};

/** The best coding that a browser takes. A coding with the weight 0 is refused (RFC 9110, 12.5.3). */
export function codingFor(accepted: string): Coding {
  const taken = accepted.split(",").flatMap((one) => {
    const [name = "", ...weights] = one.split(";").map((part) => part.trim().toLowerCase());
    return weights.some((weight) => /^q=0(\.0*)?$/.test(weight)) ? [] : [name];
  });
  return (["br", "gzip"] as const).find((coding) => taken.includes(coding)) ?? "identity";
}

/** Path inside the build that an address asks for; null for an address that is none. It cannot climb out. */
export function pathOf(url: string | undefined): string | null {
  try {
    const path = normalize(decodeURIComponent(new URL(url ?? "/", "http://localhost").pathname));
    return path === "/" ? "/index.html" : path;
  } catch {
    return null;
  }
}

/** A file as it is sent. */
export interface Served {
  readonly body: Buffer;
  readonly headers: OutgoingHttpHeaders;
}

/** Files of a build as they are sent; each is compressed once. */
export class ServedFiles {
  private readonly folder: string;
  private readonly change: (path: string, file: Buffer) => Buffer;
  private readonly compressed = new Map<string, Promise<Buffer>>();

  /** @param change - what is sent in place of a file; the file itself where left out */
  constructor(folder: string, change: (path: string, file: Buffer) => Buffer = (_, file) => file) {
    this.folder = folder;
    this.change = change;
  }

  /** A file and its headers; null for what the build does not have. */
  async at(path: string, accepted: string): Promise<Served | null> {
    const known = TYPES[extname(path)];
    const built = known && (await readFile(join(this.folder, path)).catch(() => null));
    if (!known || !built) return null;
    const file = this.change(path, built);
    const coding = known.isText ? codingFor(accepted) : "identity";
    const mark = createHash("sha256").update(file).digest("base64url").slice(0, 27);
    const headers: OutgoingHttpHeaders = {
      "Content-Type": known.type,
      // The name of such a file changes with what is in it.
      "Cache-Control": path.startsWith("/assets/") ? FOR_GOOD : ASK_EACH_TIME,
      ETag: `"${mark}-${coding}"`,
    };
    if (known.isText) headers.Vary = "Accept-Encoding";
    if (coding !== "identity") headers["Content-Encoding"] = coding;
    return { headers, body: await this.coded(`${mark}-${coding}`, coding, file) };
  }

  private coded(key: string, coding: Coding, file: Buffer): Promise<Buffer> {
    const made = this.compressed.get(key) ?? CODED[coding](file);
    this.compressed.set(key, made);
    return made;
  }
}
