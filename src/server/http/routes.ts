import type { IncomingMessage, ServerResponse } from "node:http";
import type { FastifyBaseLogger, FastifyInstance, RawServerDefault } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import type { Role } from "../../school/rights";
import type { World } from "../world/world";
import type { WhoAsks } from "./whoAsks";

declare module "fastify" {
  interface FastifyContextConfig {
    /** Whoever may ask; a route that names nobody is for the head alone. */
    needs?: Role;
  }
  interface FastifyRequest {
    who: WhoAsks;
  }
}

/** A server that routes are added to. */
export type ClassServer = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>;

/** Adds the routes of a topic. */
export type Routes = (server: ClassServer, world: World) => void;
