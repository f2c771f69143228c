import type { DialDevice } from "./dialDevice";

/** A device that was lost, until it is had again. Mutable. */
export class LostDevice {
  private device: DialDevice | null = null;
  private stop: (() => void) | undefined;

  is(device: DialDevice): boolean {
    return this.device === device;
  }

  /** Connects it by itself where the browser tells of its return. */
  waitFor(device: DialDevice, connect: (device: DialDevice, open: DialDevice["open"]) => Promise<void>): void {
    this.device = device;
    this.stop = device.whenBack?.((open) => void connect(device, open));
  }

  /** Nobody waits for it any more. */
  forget(): void {
    this.stop?.();
    this.stop = undefined;
    this.device = null;
  }
}
