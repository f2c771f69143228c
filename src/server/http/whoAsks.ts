import type { FastifyRequest } from "fastify";
import type { Role } from "../../school/rights";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { secretHash } from "../security/secrets";
import type { World } from "../world/world";

/** Cookie of an instructor's browser, and of a bench that joined. */
export const COOKIES = { instructor: "gatefall_instructor", bench: "gatefall_bench" } as const;

/** An instructor who asks. */
export interface AskingInstructor {
  readonly role: "instructor" | "head";
  readonly schoolId: string;
  readonly instructorId: string;
  readonly csrf: string;
}

/** A bench that asks. Whom it may ask for is in `device_people`. */
export interface AskingBench {
  readonly role: "bench";
  readonly schoolId: string;
  readonly classId: string;
  readonly deviceId: string;
}

/** Whoever asks. */
export type WhoAsks = AskingInstructor | AskingBench | { readonly role: "anyone" };

const ANYONE: WhoAsks = { role: "anyone" };

async function instructorOf(secret: string, { database, now }: World): Promise<WhoAsks> {
  const found = await database
    .selectFrom("sign_ins")
    .innerJoin("instructors", "instructors.id", "sign_ins.instructor_id")
    .select(["sign_ins.school_id", "instructor_id", "csrf", "role"])
    .where("token_hash", "=", secretHash(secret))
    .where("expires_at", ">", now())
    .where("disabled_at", "is", null)
    .executeTakeFirst();
  if (found === undefined) return ANYONE;
  return { role: found.role, schoolId: found.school_id, instructorId: found.instructor_id, csrf: found.csrf };
}

async function benchOf(secret: string, { database }: World): Promise<WhoAsks> {
  const found = await database
    .selectFrom("devices")
    .select(["id", "school_id", "class_id"])
    .where("token_hash", "=", secretHash(secret))
    .where("signed_out_at", "is", null)
    .executeTakeFirst();
  if (found === undefined) return ANYONE;
  return {
    role: "bench",
    schoolId: found.school_id,
    classId: found.class_id,
    deviceId: found.id,
  };
}

/** Who asks, by the cookie that the role which is needed brings: one browser may be both a bench and an instructor's. */
export async function whoAsks(request: FastifyRequest, needed: Role, world: World): Promise<WhoAsks> {
  if (needed === "anyone") return ANYONE;
  const secret = request.cookies[needed === "bench" ? COOKIES.bench : COOKIES.instructor];
  if (secret === undefined || secret === "") return ANYONE;
  return needed === "bench" ? benchOf(secret, world) : instructorOf(secret, world);
}

/** The instructor who asks. @throws {SchoolError} "not-signed-in" */
export function askingInstructor({ who }: FastifyRequest): AskingInstructor {
  if (who.role === "instructor" || who.role === "head") return who;
  throw new SchoolError(schoolProblem("not-signed-in", []));
}

/** The bench that asks. @throws {SchoolError} "not-signed-in" */
export function askingBench({ who }: FastifyRequest): AskingBench {
  if (who.role === "bench") return who;
  throw new SchoolError(schoolProblem("not-signed-in", []));
}
