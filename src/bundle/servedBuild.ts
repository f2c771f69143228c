import type { IncomingMessage, ServerResponse } from "node:http";
import { join } from "node:path";
import type { Plugin } from "vite";
import { pathOf, type Served, ServedFiles } from "./servedFiles.ts";

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
