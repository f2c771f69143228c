import type { Chance } from "../../src/statistics/chance";

/** Any JSON, as it comes out of a file. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** A place in a JSON value: keys from the outside in. */
export type Place = readonly (string | number)[];

/** One of a list that has some. */
export const pick = <One>(chance: Chance, of: readonly One[]): One => of[Math.floor(chance() * of.length)] as One;

/** A copy that can be changed. */
export const copyOf = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;

/** Every place in a value, the inner ones after those that hold them. */
export function placesIn(value: Json, at: Place = []): Place[] {
  if (value === null || typeof value !== "object") return at.length === 0 ? [] : [at];
  const inside = Object.entries(value).flatMap(([key, one]) =>
    placesIn(one, [...at, Array.isArray(value) ? Number(key) : key]),
  );
  return at.length === 0 ? inside : [at, ...inside];
}

/** What is at a place, and what holds it. */
function holderOf(value: Json, at: Place): { holder: Json[] | { [key: string]: Json }; key: string | number } {
  let holder = value;
  for (const key of at.slice(0, -1)) holder = (holder as { [key: string]: Json })[key] ?? null;
  return { holder: holder as { [key: string]: Json }, key: at.at(-1) ?? "" };
}

export const valueAt = (value: Json, at: Place): Json =>
  at.reduce<Json>((inside, key) => (inside as { [key: string]: Json })[key] ?? null, value);

/** Puts a value at a place of another, in place; undefined takes away what is there. */
export function putAt(value: Json, at: Place, put: Json | undefined): void {
  const { holder, key } = holderOf(value, at);
  if (put !== undefined) (holder as { [key: string]: Json })[key] = put;
  else if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}

/** Another text that is like it: a letter more, fewer or another. */
function likeText(text: string, chance: Chance): string {
  const at = Math.floor(chance() * (text.length + 1));
  const letter = pick(chance, ["a", "Z", "0", "9", " ", "-", "é"]);
  return pick(chance, [
    text.slice(0, at) + letter + text.slice(at + 1),
    text.slice(0, at) + letter + text.slice(at),
    text.slice(0, at) + text.slice(at + 1),
    "",
  ]);
}

const likeNumber = (value: number, chance: Chance) =>
  pick(chance, [value + 1, value - 1, value + 0.25, -value, 0, 1, value * 10, value + 60_000, 1e9]);

/** Another value of the same kind, as somebody puts there who wants to be believed; undefined to take it away. */
export function likeIt(value: Json, chance: Chance): Json | undefined {
  if (chance() < 0.08) return undefined;
  if (typeof value === "boolean") return !value;
  if (typeof value === "number") return likeNumber(value, chance);
  if (typeof value === "string") return likeText(value, chance);
  if (Array.isArray(value))
    return pick(chance, [[], value.slice(0, -1), value.toReversed(), [...value, ...value.slice(-1)]]);
  return value === null ? pick(chance, [0, "", [], false]) : {};
}

/** A place as it is read in code: `tries[0].opened`. */
export const placeText = (at: Place): string =>
  at.map((key, k) => (typeof key === "number" ? `[${key}]` : k === 0 ? key : `.${key}`)).join("");

/** What may be put where a number, a text or a list was asked for. */
const ODD: readonly Json[] = [
  null,
  true,
  "",
  "three-wheel",
  -1,
  1e300,
  0.1 + 0.2,
  [],
  {},
  [[[]]],
  "1e999",
  "\u202e",
  1e9,
];

/** A copy each time: what is put is spoiled further, and the next one starts from here again. */
const odd = (chance: Chance): Json => copyOf(pick(chance, ODD));

/** A list as long as nobody means it. What is long already is not made longer: that would fill the memory here. */
function repeated(value: Json, chance: Chance): Json {
  const [first = null] = Array.isArray(value) ? value : [];
  if (first === null || JSON.stringify(first).length > 100) return odd(chance);
  return Array.from({ length: 3000 }, () => copyOf(first));
}

/** Changes one place of a value for the worse, in place. @returns the place */
export function spoil(value: Json, chance: Chance): Place {
  const at = pick(chance, placesIn(value));
  const before = valueAt(value, at);
  putAt(value, at, pick(chance, [likeIt, (_: Json, by: Chance) => odd(by), repeated])(before, chance));
  return at;
}

/** A text of JSON that was good once. */
export function spoiledText(good: Json, chance: Chance): string {
  const copy = copyOf(good);
  const times = 1 + Math.floor(3 * chance());
  for (let k = 0; k < times && placesIn(copy).length > 0; k++) spoil(copy, chance);
  const text = JSON.stringify(copy);
  const cut = Math.floor(chance() * text.length);
  return pick(chance, [text, text, text, text, text.slice(0, cut), text.slice(0, cut) + text.slice(cut + 1)]);
}
