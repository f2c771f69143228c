import type { FastifyReply, FastifyRequest } from "fastify";
import { pathOf, ServedFiles } from "../../bundle/servedFiles";
import type { ClassServer } from "../http/routes";
import type { Authority } from "../tls/tls";

/** Tells the app that a class server sends it; without it the app asks for nothing. */
const MARK = Buffer.from('<meta name="class-server" content="/api">');
const HEAD = "<head>";

/** The page with the mark at the beginning of its head; every other file as it was built. */
function marked(path: string, file: Buffer): Buffer {
  if (path !== "/index.html") return file;
  const inHead = file.indexOf(HEAD) + HEAD.length;
  return Buffer.concat([file.subarray(0, inHead), MARK, file.subarray(inHead)]);
}

/** Serves the built app, compressed, beside the answers of the server. @param folder - of the build */
export function serveApp(server: ClassServer, folder: string): void {
  const files = new ServedFiles(folder, marked);
  const send = async (request: FastifyRequest, reply: FastifyReply) => {
    const path = pathOf(request.url);
    const served = path === null ? null : await files.at(path, String(request.headers["accept-encoding"] ?? ""));
    if (served === null) return reply.callNotFound();
    reply.headers(served.headers as Record<string, string>);
    if (request.headers["if-none-match"] === served.headers.ETag) return reply.status(304).send();
    return reply.send(served.body);
  };
  server.get("/*", { config: { needs: "anyone" }, schema: { hide: true } }, send);
}

/** Hands out the certificate of the school's own authority, as devices take it. */
export function serveAuthority(server: ClassServer, { certificate }: Authority): void {
  server.get("/authority.crt", { config: { needs: "anyone" }, schema: { hide: true } }, (_request, reply) =>
    reply.type("application/x-x509-ca-cert").send(certificate),
  );
}
