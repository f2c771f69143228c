import fc from "fast-check";

/** A JSON Schema, as far as ours are written. */
export interface JsonSchema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly maxItems?: number;
  readonly minItems?: number;
}

/** Values that have broken programs before. */
const JUNK: readonly unknown[] = [
  null,
  "",
  "\u0000",
  "\ud800",
  "'; drop table records; --",
  "__proto__",
  "x".repeat(3000),
  -1,
  0,
  -0,
  1e308,
  2 ** 53,
  0.1,
  [],
  {},
  [[[[]]]],
  true,
  "%00%ff%2e%2e",
  "𝕏é\u202e",
];

const texts = new Map<string, fc.Arbitrary<string>>();

/** Texts of a length. Made once: making one takes a thousand times as long as drawing from it. */
function textOf(minLength: number, maxLength: number): fc.Arbitrary<string> {
  const key = `${minLength} ${maxLength}`;
  const made = texts.get(key) ?? fc.string({ minLength, maxLength, unit: "grapheme" });
  texts.set(key, made);
  return made;
}

const junk: fc.Arbitrary<unknown> = fc.oneof(fc.constantFrom(...JUNK), fc.jsonValue({ maxDepth: 3 }));

function anyText(
  { pattern, minLength = 0, maxLength = 60 }: JsonSchema,
  known: readonly string[],
): fc.Arbitrary<string> {
  const long = Math.max(minLength, Math.min(maxLength, minLength + 40));
  // What a pattern asks for, not longer than a request has room for.
  const free =
    pattern === undefined
      ? textOf(minLength, long)
      : fc.stringMatching(new RegExp(pattern)).map((text) => text.slice(0, Math.max(200, minLength)));
  return known.length === 0 ? free : fc.oneof(free, fc.constantFrom(...known));
}

function anyNumber({ type, minimum = -1e6, maximum = 1e13 }: JsonSchema): fc.Arbitrary<number> {
  const [min, max] = [Math.max(minimum, -(2 ** 50)), Math.min(maximum, 2 ** 50)];
  const whole = fc.maxSafeInteger().map((n) => Math.floor(min + (Math.abs(n) % Math.max(1, max - min + 1))));
  return type === "integer" ? whole : fc.oneof(whole, fc.double({ min, max, noNaN: true, noDefaultInfinity: true }));
}

function anyObject({ properties = {}, required = [] }: JsonSchema, spoil: number, known: readonly string[]) {
  const fields = Object.fromEntries(
    Object.entries(properties).map(([name, schema]) => [name, anyOfSchema(schema, spoil, known)]),
  );
  const sound: fc.Arbitrary<Record<string, unknown>> = fc.record(fields, {
    requiredKeys: required.filter((name) => name in fields),
  });
  if (spoil === 0) return sound;
  const spoiled = fc.tuple(sound, fc.constantFrom("more", ...Object.keys(properties)), junk);
  return fc.oneof(
    { weight: 100, arbitrary: sound },
    { weight: spoil, arbitrary: spoiled.map(([value, key, bad]) => ({ ...value, [key]: bad })) },
  );
}

function sound(schema: JsonSchema, spoil: number, known: readonly string[]): fc.Arbitrary<unknown> {
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices !== undefined) return fc.oneof(...choices.map((one) => anyOfSchema(one, spoil, known)));
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  if ("const" in schema) return fc.constant(schema.const);
  switch (schema.type) {
    case "object":
      return anyObject(schema, spoil, known);
    case "array":
      return fc.array(anyOfSchema(schema.items ?? {}, spoil, known), {
        minLength: schema.minItems ?? 0,
        maxLength: Math.min(schema.maxItems ?? 3, Math.max(3, schema.minItems ?? 0)),
      });
    case "string":
      return anyText(schema, known);
    case "number":
    case "integer":
      return anyNumber(schema);
    case "boolean":
      return fc.boolean();
    case "null":
      return fc.constant(null);
    default:
      return junk;
  }
}

/**
 * Values of a schema, and around it.
 *
 * @param spoil - of a hundred parts, how many are spoiled in some place; 0 for none
 * @param known - texts that mean something to the server, such as ids
 */
export function anyOfSchema(schema: JsonSchema, spoil: number, known: readonly string[]): fc.Arbitrary<unknown> {
  const fitting = sound(schema, spoil, known);
  if (spoil === 0) return fitting;
  return fc.oneof({ weight: 100, arbitrary: fitting }, { weight: Math.ceil(spoil / 4), arbitrary: junk });
}
