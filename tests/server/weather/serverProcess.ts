import { createInterface } from "node:readline";
import { start } from "../../../src/server/start/running";

/* A class server in a process of its own, without an app; says where it listens, and for each line what it has used so far. */

const [data = "", database = ""] = process.argv.slice(2);
const options = {
  data,
  database: database === "" ? undefined : database,
  host: "127.0.0.1",
  port: 0,
  isBehindProxy: false,
  tls: undefined,
  app: undefined,
};
try {
  const running = await start(options, data);
  process.stdout.write(`listens ${running.addresses[0]}\n`);
  createInterface({ input: process.stdin }).on("line", () => {
    process.stdout.write(`${JSON.stringify(process.cpuUsage())}\n`);
  });
} catch (error) {
  process.stdout.write(`fails ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 2;
}
