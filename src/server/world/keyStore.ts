/** Where the private halves of keys lie: never in the database, and in no backup of it. */
export interface KeyStore {
  /** The private half of a key; null where it is not here. @param fingerprint - of its public half */
  readonly read: (fingerprint: string) => Promise<Uint8Array | null>;
  /** Keeps a private half for good. */
  readonly write: (fingerprint: string, privateKey: Uint8Array) => Promise<void>;
}
