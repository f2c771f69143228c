const BYTES = 16;

/** An id that no other machine gives. Pages without a secure address have no `randomUUID`, but all have random bytes. */
export const newId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(BYTES)), (byte) => byte.toString(16).padStart(2, "0")).join("");
