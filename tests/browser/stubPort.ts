import { expect, type Page } from "@playwright/test";
import { withChecksum } from "../support/board/writeWireLine";

/** What the stub leaves on the page for the test. */
interface StubWindow {
  stubPort: { say: (text: string) => void; isOpen: () => boolean; pull: () => void; plugIn: () => void };
}

/** Puts a stub in the place of the page's serial ports. It runs in the page. */
function stubSerial(): void {
  let input: ReadableStreamDefaultController<Uint8Array> | null = null;
  const port = Object.assign(new EventTarget(), {
    readable: null as ReadableStream<Uint8Array> | null,
    writable: new WritableStream<Uint8Array>(),
    open: async () => {
      port.readable = new ReadableStream<Uint8Array>({
        start: (controller) => {
          input = controller;
        },
        cancel: () => {
          input = null;
        },
      });
    },
    close: async () => undefined,
  });
  const serial = Object.assign(new EventTarget(), { requestPort: async () => port });
  Object.defineProperty(navigator, "serial", { value: serial });
  (window as unknown as StubWindow).stubPort = {
    say: (text) => input?.enqueue(new TextEncoder().encode(text)),
    isOpen: () => input !== null,
    pull: () => {
      port.readable = null;
      input?.error(new DOMException("gone", "NetworkError"));
      input = null;
      port.dispatchEvent(new Event("disconnect"));
    },
    plugIn: () => serial.dispatchEvent(Object.defineProperty(new Event("connect"), "target", { value: port })),
  };
}

/** Steps in a millisecond at 25 turns a second. */
const STEPS_IN_MS = 60;

/** An encoder board behind a stub of the browser's serial port: what it says is written here. */
export class StubPort {
  private readonly page: Page;
  private seq = 0;
  private count = 0;
  private ms = 0;
  private starts = 1;

  private constructor(page: Page) {
    this.page = page;
  }

  /** @param page - before it is opened */
  static async on(page: Page): Promise<StubPort> {
    // What runs a bench names functions by a call that a page does not know.
    await page.addInitScript("globalThis.__name ??= (named) => named;");
    await page.addInitScript(stubSerial);
    return new StubPort(page);
  }

  /** An encoder that turns the dial of the bench. */
  static async onBench(page: Page): Promise<StubPort> {
    const port = await StubPort.on(page);
    await page.goto("#/bench?seed=5");
    await page.getByRole("button", { name: /^More/ }).click();
    await page.getByRole("button", { name: "Connect: Encoder on a serial line" }).click();
    await port.start();
    await expect(page.getByText("Status: turns the dial")).toBeVisible();
    await page.keyboard.press("Escape");
    return port;
  }

  /** The board starts, and says its hello once the page listens. */
  async start(): Promise<void> {
    await this.page.waitForFunction(() => (window as unknown as StubWindow).stubPort.isOpen());
    this.seq = 0;
    this.count = 0;
    this.ms = 0;
    await this.say("h", [2400, 1]);
  }

  async startAnew(): Promise<void> {
    this.starts += 1;
    await this.start();
  }

  /** Turned by so many steps, left positive, as fast as a hand may; 0 says again where it is. */
  async turn(steps: number): Promise<void> {
    this.count += steps;
    this.ms += Math.ceil(Math.abs(steps) / STEPS_IN_MS);
    await this.say("p");
  }

  /** It speaks, and nothing of that arrives for so long, ms. */
  beUnheard(lasts_ms: number): void {
    this.seq += Math.ceil(lasts_ms / 250);
    this.ms += lasts_ms;
  }

  /** Its button is pressed. */
  async press(): Promise<void> {
    await this.say("b");
  }

  /** Turned, but the line that says so is damaged on its way. */
  async sayDamaged(steps: number): Promise<void> {
    this.count += steps;
    await this.send(`${this.next("p").replace("p", "q")}\n`);
  }

  /** Bytes of a board that somebody else simulates. */
  async sayBytes(bytes: Uint8Array): Promise<void> {
    await this.send(new TextDecoder().decode(bytes));
  }

  /**
   * Turned steadily, a line every so many milliseconds, each sent by the page itself when it is due.
   *
   * @param steps - of each line
   */
  async turnSteadily(steps: number, lines: number, every_ms: number): Promise<void> {
    const texts = Array.from({ length: lines }, () => {
      this.count += steps;
      return `${this.next("p", [], every_ms)}\n`;
    });
    await this.page.evaluate(
      async ([all, every]) => {
        const began = performance.now();
        // A busy page is late; the bytes have come in by then all the same.
        for (let k = 0; k < all.length; ) {
          const due = Math.floor((performance.now() - began) / every) + 1;
          for (; k < Math.min(due, all.length); k++) (window as unknown as StubWindow).stubPort.say(all[k] ?? "");
          await new Promise((later) => setTimeout(later, every / 2));
        }
      },
      [texts, every_ms] as const,
    );
  }

  /** So many lines at once, each turned by a step, in the small pieces that a browser hands out. */
  async flood(lines: number): Promise<void> {
    const texts = Array.from({ length: lines }, () => {
      this.count += 1;
      return `${this.next("p")}\n`;
    });
    await this.page.evaluate((all) => {
      for (const text of all) (window as unknown as StubWindow).stubPort.say(text);
    }, texts);
  }

  /** The plug is pulled. */
  async pull(): Promise<void> {
    await this.page.evaluate(() => (window as unknown as StubWindow).stubPort.pull());
  }

  /** It is plugged in again, which the browser tells by itself. */
  async plugIn(): Promise<void> {
    await this.page.evaluate(() => (window as unknown as StubWindow).stubPort.plugIn());
  }

  private async say(type: string, more: readonly number[] = []): Promise<void> {
    await this.send(`${this.next(type, more)}\n`);
  }

  private next(type: string, more: readonly number[] = [], every_ms = 8): string {
    const line = withChecksum([type, this.seq & 0xffff, this.count, this.ms, this.starts, 0, ...more].join(" "));
    this.seq += 1;
    this.ms += every_ms;
    return line;
  }

  private async send(text: string): Promise<void> {
    await this.page.evaluate((all) => (window as unknown as StubWindow).stubPort.say(all), text);
  }
}
