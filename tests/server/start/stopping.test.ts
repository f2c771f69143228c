import { once } from "node:events";
import { mkdtemp, rm } from "node:fs/promises";
import { type IncomingMessage, request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { start } from "../../../src/server/start/running";
import { SETTING_UP } from "../../../src/server/start/startLines";

test("a server that is stopped answers what was asked, takes no more, and leaves its folder to the next", async () => {
  const data = await mkdtemp(join(tmpdir(), "class-stop-"));
  const usual = { data, database: undefined, host: "127.0.0.1", port: 0, isBehindProxy: false, app: undefined };
  const running = await start({ ...usual, tls: undefined }, data);
  const [address = ""] = running.addresses;
  const token = running.firstLink?.split("token=")[1];
  const asked = request(`${address}api/schools`, { method: "POST", headers: { "content-type": "application/json" } });
  const answered = once(asked, "response");
  asked.end(JSON.stringify({ token, school: "Hill", name: "Ada", login: "ada", password: "a long password" }));
  await once(asked, "finish");
  // Asked after it, on another connection: the server has the first by now, and the hash of a password takes longer.
  expect((await fetch(`${address}api/me`)).status).toBe(401);
  const stopped = running.stop();
  const [answer] = (await answered) as [IncomingMessage];
  answer.resume();
  expect(answer.statusCode).toBe(200);
  await stopped;
  await expect(fetch(`${address}api/me`)).rejects.toThrow();
  const said: string[] = [];
  const next = await start({ ...usual, tls: undefined }, data, (line) => said.push(line));
  expect(next.firstLink, "what was answered is stored").toBeNull();
  await next.stop();
  expect(said).toEqual([`Opening the database in ${data}. That takes some seconds.`, SETTING_UP]);
  await rm(data, { recursive: true });
});
