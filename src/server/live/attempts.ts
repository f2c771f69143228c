import { setTimeout as pause } from "node:timers/promises";
import { type GrowingAttempt, growingAttempt } from "../../school/wire/liveWire";
import type { World } from "../world/world";
import type { Place } from "./hands";
import type { LiveHub } from "./liveHub";

/** Looks for a row that another server lays down, and the pause between two, ms. */
const LOOKS = 20;
const PAUSE_MS = 50;

/** Lays the attempt of a bench down for another server: a motion is too large for what servers tell each other. */
export async function layDown(place: Place, attempt: GrowingAttempt, { database, now }: World): Promise<void> {
  const row = { at: now(), body: JSON.stringify(attempt) };
  await database
    .insertInto("live_attempts")
    .values({ ...row, school_id: place.schoolId, device_id: place.deviceId })
    .onConflict((conflict) => conflict.columns(["school_id", "device_id"]).doUpdateSet(row))
    .execute();
}

/** Takes the row up, so that none is left. */
async function takenUp({ schoolId, deviceId }: Place, { database }: World): Promise<GrowingAttempt | null> {
  const row = await database
    .deleteFrom("live_attempts")
    .where("school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .returning("body")
    .executeTakeFirst();
  return row === undefined ? null : growingAttempt.parse(JSON.parse(row.body));
}

/** The attempt that grows or has just ended at a bench, whichever server it is connected to; null where there is none. */
export async function attemptOf(place: Place, hub: LiveHub, world: World): Promise<GrowingAttempt | null> {
  const here = hub.attemptAt(place);
  if (here !== undefined) return here;
  if (!hub.hasAttempt(place)) return null;
  hub.want(place);
  for (let look = 0; look < LOOKS; look++) {
    await pause(PAUSE_MS);
    const found = await takenUp(place, world);
    if (found !== null) return found;
  }
  return null;
}
