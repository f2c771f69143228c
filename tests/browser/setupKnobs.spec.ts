import type { Page } from "@playwright/test";
import { violations } from "./axe";
import { expect, test } from "./page";
import {
  CONTROLLER_STICK,
  connectKnob,
  learnKnob,
  MIDI_KNOB,
  PHONE_KNOB,
  plugMidi,
  sleepPhone,
  switchController,
  VOLUME_KNOB,
  zeroAndCheck,
} from "./stubKnobs";

/*
 * The setup of each knob that is no encoder, to its end, and what it says when the knob goes. The browser's MIDI, game
 * controllers and orientation are stubs, and the knob's keys are pressed: no real device was tried.
 */

const task = (page: Page) => page.locator("[aria-labelledby=setup-task]");
const device = (page: Page) => page.getByRole("region", { name: "Your device" });
const learn = (page: Page) => page.getByRole("button", { name: "Learn the knob" });

const COARSE = "This source is coarse. Use it for turns and their order.";

test("a MIDI knob is learned and set up; its cable is missed by a sentence, and it comes back by itself", async ({
  page,
}) => {
  await connectKnob(page, MIDI_KNOB);
  await expect(device(page)).toContainText("Status: not learned yet");
  expect(await violations(page)).toEqual([]);
  await learnKnob(page, MIDI_KNOB);
  await zeroAndCheck(page, MIDI_KNOB);
  await expect(task(page)).toContainText("Smallest step4.2 graduations");
  await expect(task(page)).toContainText(COARSE);
  await plugMidi(page, "disconnected");
  await expect(device(page)).toContainText("The MIDI device was unplugged. Plug it in again.");
  await expect(page.getByRole("button", { name: "Connect again" })).toBeVisible();
  await plugMidi(page, "connected");
  await expect(device(page)).toContainText("MIDI knob without ends: connected again.");
  await expect(device(page)).toContainText("Status: turns the dial, coarse");
});

test("a volume knob is learned by its keys and set up; another window that had the keys is told", async ({ page }) => {
  await connectKnob(page, VOLUME_KNOB);
  await learnKnob(page, VOLUME_KNOB);
  await zeroAndCheck(page, VOLUME_KNOB);
  await expect(task(page)).toContainText(COARSE);
  await page.evaluate(() => dispatchEvent(new Event("focus")));
  await expect(device(page)).toContainText("This page was in the background and did not see the knob.");
});

test("a stick is learned once its controller is there, and set up; one that is switched off is missed", async ({
  page,
}) => {
  await connectKnob(page, CONTROLLER_STICK);
  await expect(device(page)).toContainText("No game controller is seen yet. Press a button on it.");
  // Of one that is not there nothing can be learned.
  await expect(learn(page)).toHaveCount(0);
  await switchController(page, true);
  await expect(learn(page)).toBeVisible();
  await learnKnob(page, CONTROLLER_STICK);
  await zeroAndCheck(page, CONTROLLER_STICK);
  await switchController(page, false);
  await expect(device(page)).toContainText(
    "The game controller was switched off or unplugged. Switch it on and press a button on it.",
  );
  await switchController(page, true);
  await expect(device(page)).toContainText("connected again");
});

test("a phone on a knob is set up, and says that it slept", async ({ page }) => {
  await connectKnob(page, PHONE_KNOB);
  await expect(device(page)).toContainText("Status: turns the dial in steps of 0.03 graduations");
  await zeroAndCheck(page, PHONE_KNOB);
  await expect(task(page)).not.toContainText(COARSE);
  await sleepPhone(page);
  await expect(device(page)).toContainText("This page was in the background and did not see the phone.");
  await expect(device(page)).toContainText("Set 0 again, then check again.");
});

test("a phone whose sensor is refused, and a MIDI device that is, have their sentence and the way back", async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.assign(DeviceOrientationEvent, { requestPermission: async () => "denied" });
    Object.defineProperty(navigator, "requestMIDIAccess", {
      value: () => Promise.reject(new DOMException("denied", "NotAllowedError")),
    });
  });
  for (const [title, says] of [
    [PHONE_KNOB.title, "The browser refused access to the phone's motion sensor. Allow it in the browser's settings"],
    [MIDI_KNOB.title, "The browser refused access to the MIDI device. Allow it in the browser's settings"],
  ] as const) {
    await connectKnob(page, { title, install: async () => undefined, turn: async () => undefined });
    await expect(device(page)).toContainText(says);
    await expect(page.getByRole("button", { name: "Connect again" })).toBeVisible();
    await page.getByRole("button", { name: "Choose another source" }).click();
    await expect(page.getByRole("heading", { name: "Choose what you turn" })).toBeFocused();
  }
});
