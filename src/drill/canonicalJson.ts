import { DrillError } from "./drillError";

const bad = (problem: string) => new DrillError("bad-record", problem);

function objectText(value: Readonly<Record<string, unknown>>): string {
  const entries = Object.keys(value)
    .sort()
    .filter((key) => value[key] !== undefined)
    .map((key) => `${JSON.stringify(key)}:${canonicalJson(value[key])}`);
  return `{${entries.join(",")}}`;
}

const isPlain = (value: object) => [Object.prototype, null].includes(Object.getPrototypeOf(value));

/**
 * JSON that is the same text for the same content: keys sorted by UTF-16 code units, no white space, numbers as
 * ECMAScript writes them. Source: RFC 8785, JSON Canonicalization Scheme.
 *
 * @param value - plain JSON; keys with undefined are left out, as JSON does
 * @throws {DrillError} `bad-record` for what JSON cannot hold
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    if (isPlain(value)) return objectText(value as Record<string, unknown>);
    throw bad("a record holds plain JSON only");
  }
  if (typeof value === "number" && !Number.isFinite(value)) throw bad(`a record cannot hold the number ${value}`);
  const text = JSON.stringify(value);
  if (text === undefined) throw bad(`a record cannot hold a ${typeof value}`);
  return text;
}
