import type { Milliseconds } from "../../../../lock/dial";
import { StepRest } from "../../../../realdial/knobs/stepRest";
import { BAUD, ByteLimit } from "../../../../realdial/wire/byteLimit";
import { SteadySteps } from "../../../../realdial/wire/steadySteps";
import type { WireEvent } from "../../../../realdial/wire/wireEvent";
import { ASK_HELLO } from "../../../../realdial/wire/wireLine";
import { WireReader } from "../../../../realdial/wire/wireReader";
import type { Problem } from "../../../../wording/problem";
import { DeviceError, deviceProblem } from "./deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "./dialDevice";
import { type SerialPortLike, serialPorts } from "./serialPort";

/** How often it is looked whether the board speaks, milliseconds. */
const WATCH_EVERY = 300;
const DEVICE = "encoder";

const nameOf = (error: unknown) => (error instanceof Error ? error.name : "");

/** Lets the person choose a port. @throws {DeviceError} */
async function chosenPort(): Promise<SerialPortLike> {
  const serial = serialPorts();
  if (serial === undefined) throw new DeviceError(deviceProblem("no-serial", []));
  const port = await serial.requestPort().catch((error: unknown) => {
    const isNone = nameOf(error) === "NotFoundError";
    throw new DeviceError(isNone ? deviceProblem("none-chosen", []) : deviceProblem("refused", [], { device: DEVICE }));
  });
  return port;
}

/** @throws {DeviceError} */
async function encoderAt(port: SerialPortLike, link: DeviceLink): Promise<EncoderLine> {
  await port.open({ baudRate: BAUD }).catch(() => {
    throw new DeviceError(deviceProblem("port-busy", []));
  });
  return new EncoderLine(port, link);
}

/** What the dial may have missed. */
function doubtOf(event: WireEvent & { readonly type: "restarted" | "missed" | "leapt" | "gap" }): Problem {
  if (event.type === "restarted") return deviceProblem("restarted", []);
  if (event.type === "missed") return deviceProblem("missed", [], { steps: event.steps });
  if (event.type === "leapt") return deviceProblem("leapt", [], { steps: event.steps });
  return deviceProblem("gap", [], { device: DEVICE, seconds: (event.lasted / 1000).toFixed(1) });
}

/** One open port: what comes in goes through the reader, and a silent board is asked. */
class EncoderLine implements OpenDevice {
  private readonly port: SerialPortLike;
  private readonly link: DeviceLink;
  private readonly reader = new WireReader(performance.now());
  private readonly limit = new ByteLimit(performance.now());
  private readonly steps = new SteadySteps();
  private countsPerTurn = 1;
  private rest = new StepRest(1);
  private readonly timer: ReturnType<typeof setInterval>;
  private source: ReadableStreamDefaultReader<Uint8Array> | null = null;
  private isOpen = true;
  /** What keeps it from turning the dial, as it was told last. */
  private held: "no-hello" | "silent" | "newer" | null = null;

  constructor(port: SerialPortLike, link: DeviceLink) {
    this.port = port;
    this.link = link;
    port.addEventListener("disconnect", this.unplugged);
    this.timer = setInterval(() => this.watch(), WATCH_EVERY);
    void this.read();
    this.ask();
  }

  close(): void {
    if (!this.isOpen) return;
    this.isOpen = false;
    clearInterval(this.timer);
    this.port.removeEventListener("disconnect", this.unplugged);
    // A port can be closed once nothing reads it any more. Where it is gone already, there is nothing to close.
    const ended = this.source?.cancel() ?? Promise.resolve();
    ended.then(() => this.port.close()).catch(() => undefined);
  }

  private readonly unplugged = () => this.link.lost(deviceProblem("unplugged", [], { device: DEVICE }));

  /** Reads until the port ends. After an error of the line, such as too many bytes at once, the port goes on with another stream. */
  private async read(): Promise<void> {
    let hasEnded = false;
    let before: unknown = null;
    // A stream that has failed gives nothing more: a port that still has the same one is gone.
    while (this.isOpen && this.port.readable !== null && this.port.readable !== before && !hasEnded) {
      before = this.port.readable;
      this.source = this.port.readable.getReader();
      try {
        await this.readFrom(this.source);
        hasEnded = true;
      } catch {
        // The reader tells by itself what was lost.
      } finally {
        this.source.releaseLock();
        this.source = null;
      }
    }
    if (this.isOpen) this.unplugged();
  }

  private async readFrom(source: ReadableStreamDefaultReader<Uint8Array>): Promise<void> {
    for (;;) {
      const { value, done } = await source.read();
      if (done) break;
      const now = performance.now();
      if (!this.limit.allows(value.length, now)) {
        this.link.lost(deviceProblem("flooded", []));
        break;
      }
      for (const event of this.reader.take(value, now)) this.tell(event);
      if (this.reader.wantsHello) this.ask();
      else this.hold(null);
    }
  }

  private tell(event: WireEvent): void {
    if (event.type === "ready") this.greet(event.countsPerTurn);
    else if (event.type === "moved") this.turn(event.turns, event.at);
    else if (event.type === "pressed") this.link.pressed(event.at);
    else if (event.type === "newer") this.hold("newer", deviceProblem("newer", [], { version: event.version }));
    else this.link.doubted(doubtOf(event));
  }

  private greet(countsPerTurn: number): void {
    this.countsPerTurn = countsPerTurn;
    this.rest = new StepRest(1 / countsPerTurn);
    this.link.ready(1 / countsPerTurn);
    this.link.measured(this.rest.noise);
  }

  private turn(turns: number, at: Milliseconds): void {
    const noise = this.rest.take(turns, at);
    if (noise !== null) this.link.measured(noise);
    const steps = this.steps.take(Math.round(turns * this.countsPerTurn));
    this.link.turned(steps / this.countsPerTurn, at);
  }

  private watch(): void {
    if (this.reader.wantsHello) this.ask();
    const silence = this.reader.silence(performance.now());
    if (silence !== null) this.hold(silence, deviceProblem(silence, []));
  }

  /** Tells what keeps it from turning the dial, where that has become another. */
  private hold(code: typeof this.held, why: Problem | null = null): void {
    if (code === this.held) return;
    this.held = code;
    this.link.held(why);
  }

  private ask(): void {
    const { writable } = this.port;
    if (writable === null || writable.locked) return;
    const writer = writable.getWriter();
    // A port that is going away takes nothing any more: then it tells so itself.
    writer.write(new TextEncoder().encode(ASK_HELLO)).catch(() => undefined);
    writer.releaseLock();
  }
}

/** An encoder on a small board, by Web Serial. */
export const ENCODER: DialDevice = {
  kind: "encoder",
  title: "Encoder on a serial line",
  about: "A knob on an encoder and a small board, which you wire yourself. As fine as a real dial.",
  unsupported: () => (serialPorts() === undefined ? deviceProblem("no-serial", []) : null),
  open: async (link) => encoderAt(await chosenPort(), link),
  whenBack: (back) => {
    const ending = new AbortController();
    const pluggedIn = ({ target }: Event) => back((link) => encoderAt(target as SerialPortLike, link));
    serialPorts()?.addEventListener("connect", pluggedIn, ending);
    return () => ending.abort();
  },
};
