import { X509Certificate } from "node:crypto";
import { mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { createServer, request } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { makeAuthority, makeServerPair } from "../../../src/server/tls/certificates";
import { ownTls } from "../../../src/server/tls/ownTls";
import { isPrivateName } from "../../../src/server/tls/privateNames";
import { givenTls } from "../../../src/server/tls/tls";

const DAY_MS = 24 * 3600 * 1000;
const NAMES = ["localhost", "127.0.0.1", "192.168.7.9"];

let data: string;
beforeEach(async () => {
  data = await mkdtemp(join(tmpdir(), "class-tls-"));
});
afterEach(() => rm(data, { recursive: true }));

/** What a client that trusts an authority finds of a server under a name: "ok", or why it does not go on. */
async function meets(server: { cert: string; key: string }, authority: string, name: string): Promise<string> {
  const listening = createServer(server, (_request, response) => response.end("ok"));
  await new Promise<void>((resolve) => listening.listen(0, "127.0.0.1", resolve));
  const { port } = listening.address() as AddressInfo;
  try {
    return await new Promise((resolve) => {
      request({ host: "127.0.0.1", port, ca: authority, servername: name, agent: false }, (response) =>
        response.resume().on("end", () => resolve("ok")),
      )
        .on("error", (error) => resolve(error.message))
        .end();
    });
  } finally {
    listening.closeAllConnections();
    listening.close();
  }
}

describe("an authority of the server's own", () => {
  test("a client that trusts it meets the server, and one that does not goes no further", async () => {
    const tls = await ownTls(data, "desk", NAMES, Date.now());
    const other = await makeAuthority("other", Date.now());
    expect(await meets(tls, tls.authority?.certificate ?? "", "localhost")).toBe("ok");
    expect(await meets(tls, other.certificate, "localhost")).not.toBe("ok");
    expect(await meets(tls, tls.authority?.certificate ?? "", "desk.local")).toMatch(/altnames/);
  });

  // RFC 5280, 4.2.1.10, as OpenSSL checks it: somebody who steals the key can make no certificate for a bank.
  test.each([
    ["localhost", "ok"],
    ["door.school.test", "ok"],
    ["example.org", "permitted subtree violation"],
    ["notlocal", "permitted subtree violation"],
  ])("what it signs for %s is met with %s", async (name, expected) => {
    const authority = await makeAuthority("desk", Date.now());
    const { certificate, key } = await makeServerPair(authority, [{ type: "dns", value: name }], Date.now());
    expect(await meets({ cert: certificate, key }, authority.certificate, name)).toBe(expected);
  });

  test("it is made once; the server's certificate is made anew for another address and near its end", async () => {
    const now = Date.now();
    const first = await ownTls(data, "desk", NAMES, now);
    expect(await ownTls(data, "desk", NAMES, now + 300 * DAY_MS)).toEqual(first);
    const moved = await ownTls(data, "desk", [...NAMES, "10.0.0.4"], now);
    expect(moved.authority).toEqual(first.authority);
    expect(moved.cert).not.toBe(first.cert);
    expect(new X509Certificate(moved.cert).checkIP("10.0.0.4")).toBe("10.0.0.4");
    const later = await ownTls(data, "desk", NAMES, now + 380 * DAY_MS);
    expect(later.authority).toEqual(first.authority);
    expect(later.cert).not.toBe(moved.cert);
    expect(Date.parse(new X509Certificate(later.cert).validTo)).toBeGreaterThan(now + 700 * DAY_MS);
  });

  test("names of the internet are left out, and nothing but those is refused", async () => {
    const tls = await ownTls(data, "desk", ["203.0.113.5", "localhost"], Date.now());
    expect(new X509Certificate(tls.cert).subjectAltName).toBe("DNS:localhost");
    await expect(ownTls(data, "desk", ["203.0.113.5"], Date.now())).rejects.toMatchObject({
      problem: { code: "tls-no-name" },
    });
  });

  test("only its owner may read the keys, and a damaged file is made anew", async () => {
    await ownTls(data, "desk", NAMES, Date.now());
    for (const file of ["authority.pem", "server.pem"]) {
      expect((await stat(join(data, "tls", file))).mode & 0o777).toBe(0o600);
    }
    await writeFile(
      join(data, "tls", "server.pem"),
      (await readFile(join(data, "tls", "server.pem"), "utf8")).slice(0, 700),
    );
    const again = await ownTls(data, "desk", NAMES, Date.now());
    expect(await meets(again, again.authority?.certificate ?? "", "localhost")).toBe("ok");
    expect(again.authority?.certificate).not.toContain("PRIVATE");
  });
});

describe("which names are of private networks", () => {
  test.each([
    ["10.255.0.1", true],
    ["172.31.255.255", true],
    ["172.32.0.1", false],
    ["192.168.1.1", true],
    ["192.169.1.1", false],
    ["fd12::1", true],
    ["2001:db8::1", false],
    ["desk.local", true],
    ["localhost", true],
    ["local.example.org", false],
    ["mylocal", false],
  ])("%s: %s", (name, isPrivate) => {
    expect(isPrivateName(name)).toBe(isPrivate);
  });
});

describe("a certificate that the operator has", () => {
  test("a pair is taken as it is", async () => {
    const { certificate, key } = await makeAuthority("elsewhere", Date.now());
    const files = { certificate: join(data, "a.pem"), key: join(data, "b.pem") };
    await writeFile(files.certificate, certificate);
    await writeFile(files.key, key);
    expect(await givenTls(files)).toEqual({ cert: certificate, key, authority: null });
  });

  test.each([
    ["a missing file", "none.pem", "tls-not-read"],
    ["another's key", "other.pem", "tls-not-good"],
    ["a text", "text.pem", "tls-not-good"],
  ])("%s is refused", async (_name, keyFile, code) => {
    const { certificate } = await makeAuthority("elsewhere", Date.now());
    await writeFile(join(data, "a.pem"), certificate);
    await writeFile(join(data, "other.pem"), (await makeAuthority("third", Date.now())).key);
    await writeFile(join(data, "text.pem"), "hello");
    const files = { certificate: join(data, "a.pem"), key: join(data, keyFile) };
    await expect(givenTls(files)).rejects.toMatchObject({ problem: { code } });
  });
});
