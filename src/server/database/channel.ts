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

/** Times of a connection that listens, ms. */
export interface ListeningTimes {
  /** From a lost connection to the next try. */
  readonly retry: number;
  /** From one question whether the database is still there to the next: a network that is gone ends no connection. */
  readonly pulse: number;
  /** How long the database may take to answer. */
  readonly patience: number;
}

const TIMES: ListeningTimes = { retry: 1000, pulse: 15_000, patience: 5000 };

/** One connection that listens, made anew when it breaks, or when the database answers no more. */
class Listening {
  private client: pg.Client | null = null;
  private timer: NodeJS.Timeout | undefined;
  private hasEnded = false;
  private readonly address: string;
  private readonly times: ListeningTimes;
  private readonly onText: (text: string) => void;
  private readonly onBegin: () => void;

  constructor(address: string, times: ListeningTimes, onText: (text: string) => void, onBegin: () => void) {
    this.address = address;
    this.times = times;
    this.onText = onText;
    this.onBegin = onBegin;
  }

  async begin(): Promise<void> {
    const { patience, retry } = this.times;
    const client = new pg.Client({
      connectionString: this.address,
      connectionTimeoutMillis: patience,
      query_timeout: patience,
      keepAlive: true,
    });
    this.client = client;
    const lost = () => {
      if (this.client !== client) return;
      this.client = null;
      void left(client);
      clearTimeout(this.timer);
      if (!this.hasEnded) this.timer = setTimeout(() => void this.begin(), retry);
    };
    client.on("error", lost).on("end", lost);
    client.on("notification", ({ payload = "" }) => this.onText(payload));
    try {
      await client.connect();
      await client.query(`listen ${NAME}`);
      if (this.hasEnded) return;
      this.onBegin();
      this.ask(client, lost);
    } catch {
      lost();
    }
  }

  async end(): Promise<void> {
    this.hasEnded = true;
    clearTimeout(this.timer);
    const { client } = this;
    this.client = null;
    if (client !== null) await left(client);
  }

  private ask(client: pg.Client, lost: () => void): void {
    if (this.client !== client) return;
    this.timer = setTimeout(() => {
      client.query("select 1").then(() => this.ask(client, lost), lost);
    }, this.times.pulse);
    this.timer.unref();
  }
}

/** How long one waits for a database to take leave, ms. */
const LEAVE_MS = 1000;

/** Leaves a connection, whether the other end answers or not. */
async function left(client: pg.Client): Promise<void> {
  const isSilent = new Promise<void>((resolve) => setTimeout(resolve, LEAVE_MS).unref());
  await Promise.race([client.end().catch(() => undefined), isSilent]);
}

/** Servers on one PostgreSQL, by its LISTEN and NOTIFY. @param address - of the database */
export const postgresChannel = (address: string, pool: pg.Pool, times = TIMES): Channel => ({
  async tell(text) {
    await pool.query("select pg_notify($1, $2)", [NAME, text]);
  },
  hear(onText, onBegin) {
    const listening = new Listening(address, times, onText, onBegin);
    void listening.begin();
    return () => listening.end();
  },
});
