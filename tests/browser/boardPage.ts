import type { Page } from "@playwright/test";
import type { z } from "zod/mini";
import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { motionText } from "../../src/records/motion/traceCodec";
import { silentBench } from "../../src/school/live/liveBoard";
import type { deviceList } from "../../src/school/wire/classWire";
import type { attemptAnswer, BoardEvent, LiveBench } from "../../src/school/wire/liveWire";
import { openClassroom } from "./classroomPage";

const AT = Date.UTC(2026, 2, 2, 8);
const MINUTE = 60_000;
const PROFILE = shippedProfile("three-wheel");
const COMBINATION = [...(PROFILE.asSet ?? [])];

const PEOPLE = ["Bo Ellery", "Jorrel", "Mibsy Rowe", "Ondrell", "Tavro"];

const devices: z.output<typeof deviceList> = {
  devices: PEOPLE.map((name, k) => ({
    id: `d${k}`,
    name: `Bench ${k + 1}`,
    createdAt: AT,
    seenAt: AT,
    signedOutAt: null,
    people: [{ id: `p${k}`, name }],
  })),
};

const benchOf = (
  k: number,
  state: Partial<NonNullable<LiveBench["state"]>>,
  other: Partial<LiveBench> = {},
): LiveBench => ({
  ...silentBench(`d${k}`, AT - 1000),
  isHere: true,
  state: { personId: `p${k}`, exercise: "bench", isWaiting: false, unsent: 0, ...state },
  ...other,
});

const dialing = (at: number) => ({ profileId: PROFILE.id, leg: { at, of: 4 } });
const last = (isRight: boolean, minutes: number) => ({ last: { isRight, endedAt: AT - minutes * MINUTE } });

/** One of each standing. */
const BENCHES: readonly LiveBench[] = [
  benchOf(0, { ...dialing(2), ...last(true, 3) }, { attempt: { id: "a", letters: 200, hasEnded: false } }),
  benchOf(1, { exercise: "sittings", sheet: "Friday test", ...dialing(1) }, { seenAt: AT - 4 * MINUTE }),
  benchOf(2, { exercise: "handover", ...last(false, 9) }, { hand: { personId: "p2", raisedAt: AT - 2 * MINUTE } }),
  benchOf(
    3,
    { exercise: "sittings", sheet: "Friday test", unsent: 12, ...last(true, 30) },
    { isHere: false, seenAt: AT - 21 * MINUTE },
  ),
  benchOf(4, { profileId: PROFILE.id, isWaiting: true, ...last(true, 1) }, { seenAt: AT - MINUTE }),
];

/** An attempt as far as its second number, which it ran past. */
function growing(): z.input<typeof attemptAnswer> {
  const positions = idealMotion(PROFILE, COMBINATION, 0, [0, 2], 5).slice(0, 5);
  const times_ms = positions.map((_, k) => 4000 * k);
  const motion = motionText({ start: { dial: 0, slack: [0, 0, 0] }, positions, times_ms });
  return { attempt: { id: "a", startedAt: AT - MINUTE, profileId: PROFILE.id, combination: COMBINATION, motion } };
}

/** Opens the board of a class with a bench of each standing, as a server would tell it. */
export async function openBoard(page: Page): Promise<void> {
  const event: BoardEvent = { v: 1, isAll: true, now: AT, benches: [...BENCHES] };
  // A stream that a test answers ends at once; this one stays open, as that of a server does.
  await page.addInitScript(`window.EventSource = class {
    readyState = 1;
    constructor() { setTimeout(() => this.onmessage({ data: ${JSON.stringify(JSON.stringify(event))} })); }
    addEventListener() {}
    close() {}
  };`);
  await openClassroom(page, "#/instructor/class?id=c&view=board", {
    "/api/classes/c/devices": devices,
    "/api/classes/c/live/d0/attempt": growing(),
  });
  await page.getByRole("table", { name: "Live board" }).waitFor();
}
