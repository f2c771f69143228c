import { spawn } from "node:child_process";
import { createServer } from "node:net";
import { COMMANDS, type RemoteBrowser, until } from "./driver";

/** A port that is free now. */
const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const probe = createServer().once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const place = probe.address();
      probe.close(() => resolve(typeof place === "object" && place !== null ? place.port : 0));
    });
  });

/** A command that a browser never answers would hold up everything, milliseconds. */
const MOST_MS = 30_000;

async function ask(address: string, method: string, body?: object): Promise<unknown> {
  const answer = await fetch(address, {
    method,
    signal: AbortSignal.timeout(MOST_MS),
    ...(method === "POST" && { body: JSON.stringify(body ?? {}) }),
  });
  const { value } = (await answer.json()) as { readonly value: unknown };
  if (!answer.ok) throw new Error(`${address.replace(/.*\/session\/[^/]*/, "")}: ${JSON.stringify(value)}`);
  return value;
}

/**
 * Starts WebKitGTK's small browser on a screen that nobody sees, by its WebDriver.
 *
 * @param program - the driver
 * @param home - an empty folder
 */
export async function startWebKit(program: string, home: string): Promise<RemoteBrowser> {
  const port = await freePort();
  const env = {
    ...process.env,
    HOME: home,
    XDG_DATA_HOME: home,
    XDG_CACHE_HOME: home,
    GDK_BACKEND: "x11",
  };
  // A group of its own: screen, driver and browser end together.
  const running = spawn("xvfb-run", ["-a", "-s", "-screen 0 1400x1000x24", program, `--port=${port}`], {
    env,
    stdio: "ignore",
    detached: true,
  });
  const driver = `http://127.0.0.1:${port}`;
  await until("WebKit's driver answers", () => ask(`${driver}/status`, "GET").catch(() => null), 30_000);
  const { sessionId } = (await ask(`${driver}/session`, "POST", { capabilities: {} })) as {
    readonly sessionId: string;
  };
  const session = `${driver}/session/${sessionId}`;
  return {
    name: "WebKit",
    send: (command, asked) => ask(`${session}/${COMMANDS[command][2]}`, COMMANDS[command][1], asked),
    close: async () => {
      const gone = new Promise((done) => running.once("exit", done));
      await ask(session, "DELETE").catch(() => undefined);
      if (running.pid !== undefined) process.kill(-running.pid);
      await gone;
    },
  };
}
