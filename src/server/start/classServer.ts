import { createServer } from "node:https";
import cookie from "@fastify/cookie";
import swagger from "@fastify/swagger";
import websocket from "@fastify/websocket";
import fastify, { type FastifyServerFactory, type RawServerDefault, type RouteOptions } from "fastify";
import { jsonSchemaTransform, serializerCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { SECURITY_HEADERS } from "../../bundle/contentPolicy";
import { schoolProblem } from "../../school/schoolWords";
import { TELLING_LIMITS } from "../../school/wire/liveWire";
import { assignmentRoutes } from "../assignments/assignmentRoutes";
import { auditRoutes } from "../audit/auditRoutes";
import { deskRoutes } from "../desk/deskRoutes";
import { answerError } from "../http/answers";
import { checkFields } from "../http/checkFields";
import { FLOODS, type Floods, floodGate } from "../http/floods";
import { guard } from "../http/guard";
import type { ClassServer, Routes } from "../http/routes";
import { liveRoutes } from "../live/liveRoutes";
import { classRoutes } from "../people/classRoutes";
import { instructorRoutes } from "../people/instructorRoutes";
import { joinRoutes } from "../people/joinRoutes";
import { rosterRoutes } from "../people/rosterRoutes";
import { signInRoutes } from "../people/signInRoutes";
import { recordRoutes } from "../records/recordRoutes";
import { signingRoutes } from "../signing/signingRoutes";
import { benchSittingRoutes } from "../sittings/benchRoutes";
import { sittingRoutes } from "../sittings/sittingRoutes";
import type { Tls } from "../tls/tls";
import type { World } from "../world/world";
import { serveApp, serveAuthority } from "./appFiles";

/** Every topic there is. */
const TOPICS: readonly Routes[] = [
  signInRoutes,
  instructorRoutes,
  classRoutes,
  rosterRoutes,
  joinRoutes,
  recordRoutes,
  signingRoutes,
  auditRoutes,
  assignmentRoutes,
  benchSittingRoutes,
  sittingRoutes,
  liveRoutes,
  deskRoutes,
];

/**
 * Longest body that a route takes which says nothing else, bytes; longest time that a request may take to come, ms, and that
 * the server may take to set itself up: a small machine with much to do takes its time.
 */
const LIMITS = {
  bodyLimit: 256 * 1024,
  requestTimeout: 30_000,
  connectionTimeout: 60_000,
  pluginTimeout: 120_000,
} as const;

/** Longest part of an address that stands for an id, letters. */
const LONGEST_ID = 1200;

/** How the server is set up, beyond its world. */
export interface ServerSetting {
  /** Takes a line of JSON for each fault of the server; neither cookies nor bodies are in it. */
  readonly log?: { readonly write: (line: string) => unknown };
  /** Folder of the built app; without it the server answers alone. */
  readonly app?: string;
  /** Speaks https with it. */
  readonly tls?: Tls;
  /** Trusts what a proxy says of where a request came from. */
  readonly isBehindProxy?: boolean;
  /** Most requests in a minute, where they are other than usual. */
  readonly floods?: Floods;
  /** Is told every route as it is added: a test holds each against the table of rights. */
  readonly onRoute?: (route: RouteOptions) => void;
}

/** What a log says of an error: a database would tell whole rows with it. */
const shownError = ({ name, message, stack = "" }: Error) => ({ type: name, message, stack });

/** Listens on https: fastify sets the limits of a server only where it makes it itself. */
const onHttps =
  ({ cert, key }: Tls): FastifyServerFactory<RawServerDefault> =>
  (answer) => {
    const server = createServer({ cert, key, minVersion: "TLSv1.2" }, answer);
    server.requestTimeout = LIMITS.requestTimeout;
    server.setTimeout(LIMITS.connectionTimeout);
    return server;
  };

/** The class server, not listening yet. Whatever fails within a request is answered, and never ends the server. */
export async function classServer(world: World, setting: ServerSetting = {}): Promise<ClassServer> {
  const { tls, log } = setting;
  const server = fastify({
    ...LIMITS,
    ...(tls && { serverFactory: onHttps(tls) }),
    // Ids of records come in addresses.
    routerOptions: { maxParamLength: LONGEST_ID },
    // One proxy: what it was told itself of where a request came from anyone can write.
    trustProxy: (_address, hop) => setting.isBehindProxy === true && hop === 0,
    ...(log && {
      logger: { level: "error", stream: { write: (line) => void log.write(line) }, serializers: { err: shownError } },
    }),
  }).withTypeProvider<ZodTypeProvider>();
  server.setValidatorCompiler(checkFields);
  server.setSerializerCompiler(serializerCompiler);
  server.setErrorHandler(answerError);
  server.setNotFoundHandler((_request, reply) =>
    reply.status(404).send({ problem: schoolProblem("no-such-thing", []) }),
  );
  server.addHook("onSend", async (_request, reply) => {
    reply.headers({
      ...SECURITY_HEADERS,
      ...(reply.hasHeader("Cache-Control") ? {} : { "Cache-Control": "no-store" }),
    });
  });
  if (setting.onRoute !== undefined) server.addHook("onRoute", setting.onRoute);
  await server.register(cookie);
  await server.register(websocket, { options: { maxPayload: TELLING_LIMITS.bytes } });
  await server.register(swagger, {
    openapi: { info: { title: "Gatefall class server", version: "1" } },
    transform: jsonSchemaTransform,
  });
  server.decorateRequest("who");
  await server.register(async (inner) => {
    const typed = inner.withTypeProvider<ZodTypeProvider>();
    const gate = await floodGate(typed, setting.floods ?? FLOODS);
    typed.addHook("onRequest", async (request) => {
      try {
        await guard(request, world);
      } finally {
        await gate(request);
      }
    });
    for (const add of TOPICS) add(typed, world);
    typed.get("/api/openapi.json", { config: { needs: "anyone" }, schema: { hide: true } }, () => server.swagger());
  });
  if (tls?.authority) serveAuthority(server, tls.authority);
  if (setting.app !== undefined) serveApp(server, setting.app);
  await server.ready();
  return server;
}
