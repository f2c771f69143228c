import { drillProblem } from "./drillWords";
import { SheetError } from "./sheetError";

const notPlain = (found: unknown) => new SheetError(drillProblem("not-plain", [], { found: String(found) }));

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
 * @throws {SheetError} for what JSON cannot hold
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    if (isPlain(value)) return objectText(value as Record<string, unknown>);
    throw notPlain("a class");
  }
  if (typeof value === "number" && !Number.isFinite(value)) throw notPlain(value);
  const text = JSON.stringify(value);
  if (text === undefined) throw notPlain(typeof value);
  return text;
}
