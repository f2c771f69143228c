import { mkdir, open, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { KeyStore } from "../world/keyStore";

/** A folder of private keys, one a file that only its owner may read. @param data - folder of the server's data */
export function keyFolder(data: string): KeyStore {
  const folder = join(data, "keys");
  const fileOf = (fingerprint: string) => join(folder, `${fingerprint}.key`);
  return {
    async read(fingerprint) {
      const text = await readFile(fileOf(fingerprint), "utf8").catch(() => null);
      return text === null ? null : new Uint8Array(Buffer.from(text.trim(), "hex"));
    },
    async write(fingerprint, privateKey) {
      await mkdir(folder, { recursive: true, mode: 0o700 });
      const file = await open(fileOf(fingerprint), "wx", 0o600);
      try {
        await file.write(`${Buffer.from(privateKey).toString("hex")}\n`);
        await file.sync();
      } finally {
        await file.close();
      }
    },
  };
}
