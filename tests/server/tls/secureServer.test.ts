import { mkdtemp, rm } from "node:fs/promises";
import { request } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Running, start } from "../../../src/server/start/running";

let data: string;
let running: Running;
beforeAll(async () => {
  data = await mkdtemp(join(tmpdir(), "class-https-"));
  const options = { data, database: undefined, host: "127.0.0.1", port: 0, isBehindProxy: false, app: undefined };
  running = await start({ ...options, tls: "own" }, data);
});
afterAll(async () => {
  await running.stop();
  await rm(data, { recursive: true });
});

const trusted = () => ({ ca: running.authority?.certificate ?? "", agent: false }) as const;

const ask = (path: string, body?: object, headers: Record<string, string> = {}) =>
  new Promise<{ status: number; cookies: string; text: string }>((resolve, reject) => {
    const asked = request(
      `${running.addresses[0]}${path}`,
      {
        ...trusted(),
        method: body === undefined ? "GET" : "POST",
        headers: { "content-type": "application/json", ...headers },
      },
      (response) => {
        let text = "";
        response.on("data", (part) => {
          text += String(part);
        });
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, cookies: String(response.headers["set-cookie"]), text }),
        );
      },
    ).on("error", reject);
    asked.end(body === undefined ? undefined : JSON.stringify(body));
  });

test("a class server on https gives its authority's certificate, and cookies that stay on https", async () => {
  expect(running.addresses[0]).toMatch(/^https:/);
  expect((await ask("authority.crt")).text).toBe(running.authority?.certificate);
  const token = running.firstLink?.split("token=")[1];
  const made = await ask("api/schools", {
    token,
    school: "Millbrook",
    name: "Ada",
    login: "ada",
    password: "a long password",
  });
  expect(made.status).toBe(200);
  expect(made.cookies).toMatch(/HttpOnly/);
  expect(made.cookies).toMatch(/Secure/);
});

const UPGRADE = {
  connection: "Upgrade",
  upgrade: "websocket",
  "sec-websocket-version": "13",
  "sec-websocket-key": "dGhlIHNhbXBsZSBub25jZQ==",
};

test("a bench's live line is heard over https, and refused to whoever has not joined", async () => {
  expect((await ask("api/bench/live", undefined, UPGRADE)).status).toBe(401);
});

test("an address of the internet alone is refused by name, since the own authority cannot vouch for it", async () => {
  const folder = await mkdtemp(join(tmpdir(), "class-public-"));
  const options = { database: undefined, host: "203.0.113.5", port: 0, isBehindProxy: false, app: undefined };
  await expect(start({ ...options, data: folder, tls: "own" }, folder)).rejects.toMatchObject({
    problem: { code: "tls-no-name" },
  });
  await rm(folder, { recursive: true });
});
