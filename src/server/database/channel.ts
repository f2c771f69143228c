import pg from "pg";

/** How the servers of one database tell each other what is not worth a row. */
export interface Channel {
  /** Tells every server of the database, this one too. Nobody may rely on it: what was told while cut off is lost. */
  readonly tell: (text: string) => Promise<void>;
  /**
   * Hears what is told from now on.
   *
   * @param onText - what was told
   * @param onBegin - called when hearing has begun, and again after it was cut off: something may have been missed
   * @returns ends it
   */
  readonly hear: (onText: (text: string) => void, onBegin: () => void) => () => Promise<void>;
}

/** The embedded database has one server: there is nobody to tell. */
export const NO_CHANNEL: Channel = { tell: async () => undefined, hear: () => async () => undefined };

const NAME = "gatefall_live";

/** Most bytes that PostgreSQL takes at once (below 8000). */
export const CHANNEL_BYTES = 7900;

/** From a lost connection to the next try, ms. */
const RETRY_MS = 1000;

/** One connection that listens, made anew when it breaks. */
class Listening {
  private client: pg.Client | null = null;
  private retry: NodeJS.Timeout | undefined;
  private hasEnded = false;
  private readonly connect: () => pg.Client;
  private readonly onText: (text: string) => void;
  private readonly onBegin: () => void;

  constructor(connect: () => pg.Client, onText: (text: string) => void, onBegin: () => void) {
    this.connect = connect;
    this.onText = onText;
    this.onBegin = onBegin;
  }

  async begin(): Promise<void> {
    const client = this.connect();
    this.client = client;
    let isLost = false;
    const lost = () => {
      if (isLost) return;
      isLost = true;
      client.end().catch(() => undefined);
      if (!this.hasEnded) this.retry = setTimeout(() => void this.begin(), RETRY_MS);
    };
    client.on("error", lost).on("end", lost);
    client.on("notification", ({ payload = "" }) => this.onText(payload));
    try {
      await client.connect();
      await client.query(`listen ${NAME}`);
      if (!this.hasEnded) this.onBegin();
    } catch {
      lost();
    }
  }

  async end(): Promise<void> {
    this.hasEnded = true;
    clearTimeout(this.retry);
    await this.client?.end().catch(() => undefined);
  }
}

/** Servers on one PostgreSQL, by its LISTEN and NOTIFY. @param address - of the database */
export const postgresChannel = (address: string, pool: pg.Pool): Channel => ({
  async tell(text) {
    await pool.query("select pg_notify($1, $2)", [NAME, text]);
  },
  hear(onText, onBegin) {
    const listening = new Listening(() => new pg.Client({ connectionString: address }), onText, onBegin);
    void listening.begin();
    return () => listening.end();
  },
});
