import * as z from "zod/mini";
import { matching, must, within } from "../lock/fieldSchemas";
import { FARTHEST } from "../lock/wheelPackState";

/** Last moment that a date can hold, milliseconds since 1970. */
const LAST_MOMENT = 8.64e15;

/** A moment, milliseconds since 1970. */
export const moment = z
  .number(must("time"))
  .check(z.int(must("time")), z.gte(0, must("time")), z.lte(LAST_MOMENT, must("time")));

/** A span of time, milliseconds. */
export const span = within(0, LAST_MOMENT, "milliseconds");

/** What tells a record from every other on every machine; a uuid where nothing better names it. */
export const id = matching(/^[\w.:|-]{1,1200}$/, must("id", { most: 1200 }));

/** Graduations, within what the mechanics resolve. */
export const graduations = within(-FARTHEST, FARTHEST, "graduations");

const DEEPEST = 40;

/** Whether a value, parsed from JSON, has no more levels than a browser's database stores without trouble. */
function isShallow(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return false;
    level = level.flatMap((one) => (typeof one === "object" && one !== null ? Object.values(one) : []));
  }
  return true;
}

/** What another layer keeps here and checks itself when it reads it back: any JSON, not too deep. */
export const foreign = z
  .unknown()
  .check(z.refine((value) => value !== undefined && isShallow(value), must("shallow", { levels: DEEPEST })));
