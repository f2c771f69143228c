import { request as httpRequest } from "node:http";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { test as base, expect } from "@playwright/test";

/** What `npm start` sends, as it is on the wire. */
interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

const ask = (address: string, headers: Readonly<Record<string, string>> = {}, method = "GET") =>
  new Promise<Answer>((resolve, reject) => {
    const asked = httpRequest(address, { method, headers }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    });
    asked.on("error", reject).end();
  });

const test = base.extend<{ readonly home: string }>({
  /** Address of the page. */
  home: async ({ baseURL }, use) => use(baseURL ?? ""),
});

/** Addresses of the scripts, styles and other files that the first page names. */
async function linked(home: string): Promise<string[]> {
  const page = (await ask(home)).body.toString();
  return [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map(([, path = ""]) => `${home}${path}`);
}

test("scripts and styles come compressed, and are the same as uncompressed", async ({ home }) => {
  const files = await linked(home);
  expect(files.length).toBeGreaterThan(1);
  for (const file of files) {
    const plain = await ask(file);
    const zipped = await ask(file, { "accept-encoding": "gzip, deflate" });
    const small = await ask(file, { "accept-encoding": "gzip, deflate, br, zstd" });
    expect(plain.headers["content-encoding"], file).toBeUndefined();
    expect(zipped.headers["content-encoding"], file).toBe("gzip");
    expect(small.headers["content-encoding"], file).toBe("br");
    expect(gunzipSync(zipped.body).equals(plain.body), file).toBe(true);
    expect(brotliDecompressSync(small.body).equals(plain.body), file).toBe(true);
    for (const { headers, body } of [plain, zipped, small]) {
      expect(headers.vary, file).toBe("Accept-Encoding");
      expect(Number(headers["content-length"]), file).toBe(body.length);
    }
    if (plain.body.length > 1000) expect(small.body.length, file).toBeLessThan(plain.body.length * 0.7);
  }
});

test("a browser that refuses a compression does not get it", async ({ home }) => {
  const answer = await ask(home, { "accept-encoding": "br;q=0, gzip;q=0.0" });
  expect(answer.headers["content-encoding"]).toBeUndefined();
  expect(answer.body.toString()).toContain("<title>Gatefall</title>");
});

test("files that never change are kept for a year; the page and its worker are asked for each time", async ({
  home,
}) => {
  const [asset = ""] = await linked(home);
  expect((await ask(asset)).headers["cache-control"]).toBe("public, max-age=31536000, immutable");
  for (const path of ["", "index.html", "sw.js", "manifest.webmanifest", "icon.svg"]) {
    const first = await ask(`${home}${path}`);
    expect(first.status, path).toBe(200);
    expect(first.headers["cache-control"], path).toBe("no-cache");
    const again = await ask(`${home}${path}`, { "if-none-match": String(first.headers.etag) });
    expect([again.status, again.body.length], path).toEqual([304, 0]);
  }
});

test("what asks for the head alone gets no body, and no address leaves the build", async ({ home }) => {
  const head = await ask(home, {}, "HEAD");
  expect([head.status, head.body.length]).toEqual([200, 0]);
  for (const path of ["..%2fpackage.json", "assets/..%2f..%2fpackage.json", "%2e%2e/package.json", "%"]) {
    expect((await ask(`${home}${path}`)).body.toString(), path).not.toContain('"dependencies"');
  }
});
