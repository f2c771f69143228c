import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const DIST = join(import.meta.dirname, "../../dist");

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
};

/** A plain file server for the built app, as anybody's web server might be. */
export interface StaticServer {
  /** Address of the app, with a slash at the end. */
  readonly address: string;
  /** Serves from now on as if the app had been built anew: its worker is another one. */
  renew(): void;
  close(): Promise<void>;
}

/** File of the built app that a request asks for, or null where it asks for none. */
function fileFor(url: string | undefined, folder: string): string | null {
  const { pathname } = new URL(url ?? "/", "http://localhost");
  if (!pathname.startsWith(folder)) return null;
  // An absolute path cannot climb out of its root.
  const inside = normalize(`/${pathname.slice(folder.length)}`);
  return join(DIST, inside === "/" ? "index.html" : inside);
}

/**
 * Serves the built app under a folder.
 *
 * @param folder - with a slash at both ends
 */
export async function serveBuilt(folder = "/"): Promise<StaticServer> {
  let build = 0;
  const server = createServer(async (request, response) => {
    const file = fileFor(request.url, folder);
    try {
      if (file === null) throw new Error("outside the folder");
      const kept = await readFile(file);
      const body = file.endsWith("sw.js") && build > 0 ? Buffer.concat([kept, Buffer.from(`\n// ${build}`)]) : kept;
      response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => {
    server.listen(0, "127.0.0.1", resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${folder}`,
    renew: () => {
      build += 1;
    },
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
