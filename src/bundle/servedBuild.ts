import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import type { IncomingMessage, OutgoingHttpHeaders, ServerResponse } from "node:http";
import { extname, join, normalize } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, gzip, constants as zlib } from "node:zlib";
import type { Plugin } from "vite";

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
function pathOf(url: string | undefined): string | null {
  try {
    const path = normalize(decodeURIComponent(new URL(url ?? "/", "http://localhost").pathname));
    return path === "/" ? "/index.html" : path;
  } catch {
    return null;
  }
}

interface Served {
  readonly body: Buffer;
  readonly headers: OutgoingHttpHeaders;
}

/** Files of a build as they are sent; each is compressed once. */
class ServedFiles {
  private readonly folder: string;
  private readonly compressed = new Map<string, Promise<Buffer>>();

  constructor(folder: string) {
    this.folder = folder;
  }

  /** A file and its headers; null for what the build does not have. */
  async at(path: string, accepted: string): Promise<Served | null> {
    const known = TYPES[extname(path)];
    const file = known && (await readFile(join(this.folder, path)).catch(() => null));
    if (!known || !file) return null;
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

function send({ method, headers: asked }: IncomingMessage, response: ServerResponse, { body, headers }: Served): void {
  if (asked["if-none-match"] === headers.ETag) response.writeHead(304, headers).end();
  else response.writeHead(200, { ...headers, "Content-Length": body.length }).end(method === "HEAD" ? undefined : body);
}

/**
 * Sends the built app as a web server should: compressed, with the given headers on every file, and with files that never
 * change kept by the browser for a year.
 */
export const servedBuild = (headers: Readonly<Record<string, string>>): Plugin => ({
  name: "served-build",
  configurePreviewServer: ({ config, middlewares }) => {
    const files = new ServedFiles(join(config.root, config.build.outDir));
    middlewares.use(async (request, response, next) => {
      const path = pathOf(request.url);
      const isRead = request.method === "GET" || request.method === "HEAD";
      const accepted = String(request.headers["accept-encoding"] ?? "");
      const served = isRead && path !== null ? await files.at(path, accepted) : null;
      if (served === null) next();
      else send(request, response, { ...served, headers: { ...headers, ...served.headers } });
    });
  },
});
