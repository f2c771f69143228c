import type { Kysely } from "kysely";
import type { Channel } from "../database/channel";
import type { Tables } from "../database/tables/tables";
import type { KeyStore } from "./keyStore";

/** What the server has of the outer world; tests hand in their own clock and chance. */
export interface World {
  readonly database: Kysely<Tables>;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Bytes that nobody can guess. */
  readonly chance: (bytes: number) => Uint8Array;
  readonly keys: KeyStore;
  /** To the other servers of the database. */
  readonly channel: Channel;
  /** Version of this program, as it stands on what it signs. */
  readonly appVersion: string;
}
