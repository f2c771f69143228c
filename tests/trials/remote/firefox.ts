import { spawn } from "node:child_process";
import { readFile, writeFile } from "node:fs/promises";
import { connect, type Socket } from "node:net";
import { join } from "node:path";
import { COMMANDS, type RemoteBrowser, until } from "./driver";

/*
 * Firefox by Marionette, its own protocol under geckodriver, which Debian does not pack: the commands of WebDriver, as JSON
 * with its length before it, over a local connection. No library is needed for it.
 */

/** Nothing from elsewhere, no first-run pages, a free port. */
const PREFERENCES = {
  "marionette.port": 0,
  "browser.shell.checkDefaultBrowser": false,
  "browser.startup.homepage_override.mstone": "ignore",
  "datareporting.policy.dataSubmissionEnabled": false,
  "toolkit.telemetry.reportingpolicy.firstRun": false,
  "app.update.disabledForTesting": true,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
};

type Answer = readonly [type: 1, id: number, error: { readonly message: string } | null, result: unknown];

/** Messages that arrived whole; the rest stays. */
class Messages {
  private held = Buffer.alloc(0);

  take(part: Buffer): unknown[] {
    this.held = Buffer.concat([this.held, part]);
    const whole: unknown[] = [];
    for (;;) {
      const colon = this.held.indexOf(":");
      const length = Number(this.held.subarray(0, colon).toString());
      if (colon < 0 || this.held.length < colon + 1 + length) return whole;
      whole.push(JSON.parse(this.held.subarray(colon + 1, colon + 1 + length).toString()));
      this.held = this.held.subarray(colon + 1 + length);
    }
  }
}

/** Commands over an open connection, answered in their order. */
function asker(socket: Socket) {
  const messages = new Messages();
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.on("data", (part: Buffer) => {
    for (const message of messages.take(part)) {
      const answer = message as Answer;
      // The greeting is no answer.
      if (Array.isArray(message)) waiting.get(answer[1])?.(answer);
    }
  });
  let last = 0;
  return async (name: string, asked: object = {}): Promise<unknown> => {
    last += 1;
    const text = JSON.stringify([0, last, name, asked]);
    const answered = new Promise<Answer>((resolve) => waiting.set(last, resolve));
    socket.write(`${Buffer.byteLength(text)}:${text}`);
    const [, , error, result] = await answered;
    if (error !== null) throw new Error(`${name}: ${error.message}`);
    return result;
  };
}

/** Starts Firefox without a window. @param profile - an empty folder */
export async function startFirefox(program: string, profile: string): Promise<RemoteBrowser> {
  const lines = Object.entries(PREFERENCES).map(([key, value]) => `user_pref("${key}", ${JSON.stringify(value)});`);
  await writeFile(join(profile, "user.js"), lines.join("\n"));
  const env = { ...process.env, HOME: profile, MOZ_CRASHREPORTER_DISABLE: "1" };
  const running = spawn(program, ["--headless", "--marionette", "--no-remote", "--profile", profile], {
    env,
    stdio: "ignore",
  });
  const port = await until(
    "Firefox says where it listens",
    () => readFile(join(profile, "MarionetteActivePort"), "utf8").catch(() => null),
    60_000,
  );
  const socket = connect(Number(port), "127.0.0.1");
  await new Promise((resolve, reject) => socket.once("connect", resolve).once("error", reject));
  const ask = asker(socket);
  await ask("WebDriver:NewSession", {});
  return {
    name: "Firefox",
    send: (command, asked) => ask(COMMANDS[command][0], asked),
    close: async () => {
      const gone = new Promise((done) => running.once("exit", done));
      socket.destroy();
      running.kill();
      await gone;
    },
  };
}
