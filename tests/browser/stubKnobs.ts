import { expect, type Page } from "@playwright/test";

/** What the stubs leave on the page for the test. */
interface StubWindow {
  midi: EventTarget & { readonly inputs: Map<string, EventTarget & { state: string }> };
  controller: { connected: boolean; axes: number[] } | null;
  phone: { alpha: number; isAwake: boolean };
}

/** A stub of a device that turns a dial, which is learned or not, and can go. */
export interface StubKnob {
  readonly title: string;
  /** Puts it in the place of the browser's own, before the page is opened. */
  readonly install: (page: Page) => Promise<unknown>;
  /** Turned by so many twenty-fourths of a turn, left positive. */
  readonly turn: (page: Page, steps: number) => Promise<void>;
}

/** Steps of each in a turn. */
export const PER_TURN = 24;

export const MIDI_KNOB: StubKnob = {
  title: "MIDI knob without ends",
  install: (page) =>
    page.addInitScript(() => {
      const input = Object.assign(new EventTarget(), { state: "connected" });
      const midi = Object.assign(new EventTarget(), { inputs: new Map([["one", input]]) });
      (window as unknown as StubWindow).midi = midi;
      Object.defineProperty(navigator, "requestMIDIAccess", { value: async () => midi });
    }),
  turn: (page, steps) =>
    page.evaluate((count) => {
      const [input] = (window as unknown as StubWindow).midi.inputs.values();
      for (let k = 0; k < Math.abs(count); k++) {
        const data = new Uint8Array([0xb0, 16, count > 0 ? 1 : 127]);
        input?.dispatchEvent(Object.assign(new Event("midimessage"), { data }));
      }
    }, steps),
};

/** Its only cable is pulled, or plugged in again. */
export const plugMidi = (page: Page, state: "connected" | "disconnected") =>
  page.evaluate((now) => {
    const { midi } = window as unknown as StubWindow;
    for (const input of midi.inputs.values()) input.state = now;
    midi.dispatchEvent(new Event("statechange"));
  }, state);

export const VOLUME_KNOB: StubKnob = {
  title: "Volume or keyboard knob",
  install: async () => undefined,
  turn: async (page, steps) => {
    for (let k = 0; k < Math.abs(steps); k++)
      await page.keyboard.press(steps > 0 ? "AudioVolumeDown" : "AudioVolumeUp");
  },
};

/** So many looks of the page at a controller go by for each step, so that it sees all of them. */
const afterFrames = `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))`;

export const CONTROLLER_STICK: StubKnob = {
  title: "Dial of a game controller",
  install: (page) =>
    page.addInitScript(() => {
      const ours = window as unknown as StubWindow;
      ours.controller = null;
      navigator.getGamepads = () => [ours.controller as unknown as Gamepad];
    }),
  turn: async (page, steps) => {
    for (let k = 0; k < Math.abs(steps); k++) {
      await page.evaluate(
        ([by, perTurn]) => {
          const { controller } = window as unknown as StubWindow;
          const [x = 0, y = -1] = controller?.axes ?? [];
          const angle = Math.atan2(-x, -y) + (by * 2 * Math.PI) / perTurn;
          if (controller !== null) controller.axes = [-Math.sin(angle), -Math.cos(angle), 0, 0];
        },
        [Math.sign(steps), PER_TURN] as const,
      );
      await page.evaluate(afterFrames);
    }
  },
};

/** Its button is pressed, so that the browser shows it; or it is switched off. */
export const switchController = (page: Page, isOn: boolean) =>
  page.evaluate((on) => {
    (window as unknown as StubWindow).controller = on ? { connected: true, axes: [0, -1, 0, 0] } : null;
    if (on) dispatchEvent(new Event("gamepadconnected"));
  }, isOn);

export const PHONE_KNOB: StubKnob = {
  title: "This phone on a knob",
  install: (page) =>
    page.addInitScript(() => {
      const phone = { alpha: 0, isAwake: true };
      (window as unknown as StubWindow).phone = phone;
      Object.assign(DeviceOrientationEvent, { requestPermission: async () => "granted" });
      // A sensor speaks at rest too.
      setInterval(() => {
        const { alpha, isAwake } = phone;
        if (isAwake) dispatchEvent(new DeviceOrientationEvent("deviceorientation", { alpha, beta: 0, gamma: 0 }));
      }, 20);
    }),
  turn: (page, steps) =>
    page.evaluate(
      async ([by, perTurn]) => {
        const { phone } = window as unknown as StubWindow;
        for (let k = 0; k < Math.abs(by); k++) {
          phone.alpha = (phone.alpha + (Math.sign(by) * 360) / perTurn + 360) % 360;
          await new Promise((later) => setTimeout(later, 40));
        }
      },
      [steps, PER_TURN] as const,
    ),
};

/** The phone's page sleeps for a second, and is woken. */
export const sleepPhone = (page: Page) =>
  page.evaluate(async () => {
    const { phone } = window as unknown as StubWindow;
    phone.isAwake = false;
    await new Promise((later) => setTimeout(later, 1000));
    phone.isAwake = true;
  });

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

/** Chosen and connected, on the page of the setup. */
export async function connectKnob(page: Page, { title, install }: StubKnob): Promise<void> {
  await install(page);
  await page.goto("#/dial");
  await press(page, `Choose: ${title}`);
  await press(page, "Connect");
}

/** Learned by a turn left and one right. */
export async function learnKnob(page: Page, { turn }: StubKnob): Promise<void> {
  await press(page, "Learn the knob");
  await turn(page, PER_TURN);
  await press(page, "I have turned left");
  await turn(page, -PER_TURN);
  await press(page, "I have turned right");
  await expect(page.getByRole("button", { name: "Learn it again" })).toBeVisible();
}

/** From 0 to the end: up to the numbers that are asked for, by whole steps. */
export async function zeroAndCheck(page: Page, { turn }: StubKnob): Promise<void> {
  await press(page, "Go on to zero");
  await press(page, "This is 0");
  await turn(page, 3);
  await expect(page.getByText("The numbers went up.")).toBeVisible();
  await press(page, "Go on to the checks");
  for (const [by, number] of [
    [3, 25],
    [-12, 75],
    [6, 0],
  ] as const) {
    await turn(page, by);
    await expect(page.getByText(new RegExp(`^(On|.* of) ${number}: agrees`)).first()).toBeVisible();
  }
  await press(page, "Finish the setup");
  await expect(page.getByRole("heading", { name: "Your dial is set up" })).toBeFocused();
}
