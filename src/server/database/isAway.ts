/**
 * Classes and codes of PostgreSQL for what passes by itself: no connection (08), no room (53), shut down or starting
 * (57P), a transaction that another stood in the way of (40), a standby that takes no rows yet (25006).
 * Source: PostgreSQL documentation, appendix A.
 */
const PASSING = /^(08|53|57P|40|25006)/;
/** What the system says of a connection that cannot be had or is gone. */
const UNREACHED = ["ECONNREFUSED", "ECONNRESET", "EPIPE", "ETIMEDOUT", "ENOTFOUND", "EHOSTUNREACH", "EAI_AGAIN"];
/** What the driver says without a code. */
const SAID = /connection (terminated|error)|timeout exceeded when trying to connect|PGlite is (closed|closing)/i;

/** Whether an error comes of a database that does not answer just now, so that asking again may help. */
export function isAway(error: unknown): boolean {
  if (error instanceof AggregateError) return error.errors.some(isAway);
  if (!(error instanceof Error)) return false;
  const code = "code" in error && typeof error.code === "string" ? error.code : "";
  return PASSING.test(code) || UNREACHED.includes(code) || SAID.test(error.message);
}
