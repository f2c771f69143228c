import type { SerialPortLike } from "../../../src/app/hand/sources/devices/serialPort";

/** A stub of a browser's serial port: what a test says comes in, and what the page writes is noted. No real port was tried. */
export class StubSerialPort extends EventTarget implements SerialPortLike {
  readonly written: string[] = [];
  isOpen = false;
  /** What `open` fails with. */
  refusal: Error | null = null;
  readable: ReadableStream<Uint8Array> | null = null;
  readonly writable = new WritableStream<Uint8Array>({
    write: (bytes) => {
      this.written.push(new TextDecoder().decode(bytes));
    },
  });
  private input: ReadableStreamDefaultController<Uint8Array> | null = null;

  async open(): Promise<void> {
    if (this.refusal !== null) throw this.refusal;
    this.isOpen = true;
    this.renew();
  }

  async close(): Promise<void> {
    this.isOpen = false;
  }

  /** Bytes come in. */
  async say(bytes: Uint8Array | string): Promise<void> {
    this.input?.enqueue(typeof bytes === "string" ? new TextEncoder().encode(bytes) : bytes);
    await this.settled();
  }

  /** An error of the line that a port survives, as when bytes come too fast: its stream ends, and it has another. */
  async stumble(): Promise<void> {
    const { input } = this;
    this.renew();
    input?.error(new DOMException("too fast", "BufferOverrunError"));
    await this.settled();
  }

  /** Its stream fails, and it has no other. */
  async fail(): Promise<void> {
    this.input?.error(new DOMException("gone", "NetworkError"));
    await this.settled();
  }

  /** The plug is pulled. */
  async pull(): Promise<void> {
    const { input } = this;
    this.readable = null;
    input?.error(new DOMException("gone", "NetworkError"));
    this.dispatchEvent(new Event("disconnect"));
    await this.settled();
  }

  /** Lets promises come to their ends. */
  async settled(): Promise<void> {
    for (let k = 0; k < 20; k++) await Promise.resolve();
  }

  private renew(): void {
    this.readable = new ReadableStream({
      start: (controller) => {
        this.input = controller;
      },
    });
  }
}
