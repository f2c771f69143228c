import type { SCHOOL_WORDS } from "./schoolWords";

/** HTTP status of each answer that is a problem (RFC 9110; 429: RFC 6585). Every other code is 400: what was sent is wrong. */
const STATUS: Readonly<Partial<Record<keyof typeof SCHOOL_WORDS, number>>> = {
  "not-signed-in": 401,
  "wrong-sign-in": 401,
  "not-allowed": 403,
  "from-elsewhere": 403,
  "no-such-thing": 404,
  "link-not-valid": 410,
  "code-not-valid": 410,
  "card-not-valid": 410,
  "card-code-not-valid": 410,
  "wrong-password": 403,
  "wrong-pin": 403,
  "login-taken": 409,
  "last-head": 409,
  "nobody-joined": 409,
  "class-ended": 409,
  "name-taken": 409,
  "several-people": 409,
  "changed-meanwhile": 409,
  "roster-changed": 409,
  "too-large": 413,
  "wait-first": 429,
  "left-class": 409,
  "sheet-in-use": 409,
  "begun-already": 409,
  "assignment-changed": 409,
  "not-begun-yet": 409,
  "assignment-over": 409,
  "attempts-used": 409,
  "id-taken": 409,
  "try-sent-otherwise": 409,
  "server-failed": 500,
  "try-again": 503,
};

/** HTTP status of a problem. */
export const answerStatus = (code: string): number => (STATUS as Readonly<Record<string, number>>)[code] ?? 400;
