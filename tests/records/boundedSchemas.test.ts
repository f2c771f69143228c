import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import * as z from "zod/mini";

type Json = Readonly<Record<string, unknown>>;

/** Every object that a schema describes, those too that their files keep to themselves. */
const made = vi.hoisted((): unknown[] => []);

vi.mock("zod/mini", async (importOriginal) => {
  const zod = await importOriginal<typeof import("zod/mini")>();
  const kept = <Args extends readonly unknown[], Made>(make: (...args: Args) => Made) => {
    return (...args: Args): Made => {
      const one = make(...args);
      made.push(one);
      return one;
    };
  };
  return { ...zod, object: kept(zod.object), strictObject: kept(zod.strictObject) };
});

const modulesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".ts"))
    .map((file) => join("../..", folder, file));

// Of a run that shares its modules, none was made with the schemas kept.
vi.resetModules();
for (const file of ["src/records", "src/drill/sheet"].flatMap(modulesOf)) await import(/* @vite-ignore */ file);

/** A pattern without a part that may go on forever. */
const isBounded = (pattern: string) => !/[^\\][*+]|\{\d+,\}/.test(pattern);

/** Whether a text can be only so long: by a limit, by its form, or because it is one of some. */
const isShort = ({ maxLength, pattern, allOf, enum: one, const: only }: Json) =>
  [maxLength, one, only].some((limit) => limit !== undefined) ||
  [pattern, ...((allOf ?? []) as Json[]).map((part) => part.pattern)].some(
    (form) => typeof form === "string" && isBounded(form),
  );

/** Every place of a schema that takes a list or a text of any length. */
function endless(node: unknown, path: string): string[] {
  if (typeof node !== "object" || node === null) return [];
  const schema = node as Json;
  const types = [schema.type].flat();
  const isEndless =
    (types.includes("array") && schema.maxItems === undefined && schema.prefixItems === undefined) ||
    (types.includes("string") && !isShort(schema));
  return [
    ...(isEndless ? [path] : []),
    ...Object.entries(schema).flatMap(([key, inner]) => endless(inner, key === "properties" ? path : `${path}.${key}`)),
  ];
}

test("no schema of records and sheets takes a list or a text of any length", () => {
  const found = made.flatMap((one) =>
    endless(z.toJSONSchema(one as z.ZodMiniType, { io: "input", unrepresentable: "any" }), ""),
  );
  expect(made.length).toBeGreaterThan(100);
  expect([...new Set(found)]).toEqual([]);
});
