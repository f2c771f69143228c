import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parseProfile } from "../../src/lock/profileSchema";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";

const FOLDER = join(import.meta.dirname, "../../shared/profiles");

const files = readdirSync(FOLDER).map((name) => JSON.parse(readFileSync(join(FOLDER, name), "utf8")) as unknown);

describe("shipped profiles", () => {
  it("are all the files there are, each complete as the schema reads it", () => {
    const read = files.map(parseProfile).sort((one, other) => one.id.localeCompare(other.id));
    expect([...SHIPPED_PROFILES].sort((one, other) => one.id.localeCompare(other.id))).toStrictEqual(read);
  });

  it("have short names of their own, each the beginning of its title", () => {
    const names = SHIPPED_PROFILES.map(({ short = "" }) => short);
    expect(new Set(names).size).toBe(SHIPPED_PROFILES.length);
    for (const { short = "?", title } of SHIPPED_PROFILES) expect(title.startsWith(`${short}, `)).toBe(true);
  });
});
