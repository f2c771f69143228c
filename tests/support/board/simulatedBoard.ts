import { readFileSync } from "node:fs";
import { join } from "node:path";
import {
  AVREEPROM,
  AVRIOPort,
  AVRTimer,
  AVRUSART,
  avrInstruction,
  CPU,
  EEPROMMemoryBackend,
  portDConfig,
  timer0Config,
  usart0Config,
} from "avr8js";

const HERTZ = 16_000_000;
const CYCLES_PER_MS = HERTZ / 1000;
const PROGRAM_BYTES = 32_768;

export const FIRMWARE = join(import.meta.dirname, "../../../shared/firmware");

/** The bytes of an image in the hexadecimal format that programmers take; records of data alone. */
export function imageOf(hex: string): Uint8Array {
  const image = new Uint8Array(PROGRAM_BYTES).fill(0xff);
  for (const record of hex.split("\n").filter((line) => line.startsWith(":"))) {
    const [size = 0, high = 0, low = 0, type, ...data] = Buffer.from(record.slice(1), "hex");
    if (type === 0) image.set(data.slice(0, size), high * 256 + low);
  }
  return image;
}

export const committedImage = (): Uint8Array => imageOf(readFileSync(join(FIRMWARE, "encoder.hex"), "utf8"));

/** Lines A (2) and B (1) of an encoder, one step after another as A leads B. */
const LINES = [0b00, 0b10, 0b11, 0b01];
const PINS = { a: 2, b: 3, button: 4 };

/**
 * A simulated board with the firmware's image in it, a simulated encoder on its pins and a button: no board of this kind has
 * been tried. It runs as fast as it can; its time is that of its own cycles.
 */
export class SimulatedBoard {
  private readonly cpu: CPU;
  private readonly pins: AVRIOPort;
  private readonly serial: AVRUSART;
  private written: number[] = [];
  /** Which of the four states its encoder is in. */
  private place = 0;
  /** Cycles at which the next step is due: steps keep their rhythm, whatever an instruction takes. */
  private due = 0;
  /** Steps that the encoder has really taken. */
  steps = 0;

  /** @param eeprom - outlasts the board's start; its bytes are 255 as new */
  constructor(image: Uint8Array, eeprom = new EEPROMMemoryBackend(1024)) {
    this.cpu = new CPU(new Uint16Array(image.buffer.slice(0)));
    this.pins = new AVRIOPort(this.cpu, portDConfig);
    this.serial = new AVRUSART(this.cpu, usart0Config, HERTZ);
    this.serial.onByteTransmit = (byte) => this.written.push(byte);
    new AVRTimer(this.cpu, timer0Config);
    new AVREEPROM(this.cpu, eeprom);
    this.setLines(0);
    this.pins.setPin(PINS.button, true);
  }

  /** Milliseconds since it started. */
  get ms(): number {
    return this.cpu.cycles / CYCLES_PER_MS;
  }

  /** What it has written since it was last asked. */
  take(): Uint8Array {
    const bytes = Uint8Array.from(this.written);
    this.written = [];
    return bytes;
  }

  /** Lets time pass. */
  rest(ms: number): void {
    this.due = Math.max(this.due, this.cpu.cycles) + ms * CYCLES_PER_MS;
    this.runUntil(this.due);
  }

  /** A byte comes in from the host. */
  hear(text: string): void {
    for (const letter of text) {
      this.serial.writeByte(letter.charCodeAt(0));
      this.rest(0.2);
    }
  }

  press(): void {
    this.pins.setPin(PINS.button, false);
  }

  release(): void {
    this.pins.setPin(PINS.button, true);
  }

  /** Turns the encoder by single steps. @param perSecond - steps in a second */
  turn(steps: number, perSecond: number): void {
    for (let k = 0; k < Math.abs(steps); k++) this.step(Math.sign(steps), HERTZ / perSecond);
  }

  /** Line A or B closes and opens some times before it settles, `apart` microseconds between. */
  stepWithBounce(sign: number, times: number, apart: number): void {
    const before = this.lines;
    this.step(sign, 0);
    const after = this.lines;
    for (let k = 0; k < times; k++) {
      for (const lines of [before, after]) {
        this.pass((apart * HERTZ) / 1e6);
        this.setLines(lines);
      }
    }
  }

  /** Both lines change at once: which way it went cannot be known. */
  skip(): void {
    this.place += 2;
    this.setLines(this.lines);
  }

  private get lines(): number {
    return LINES[this.place & 3] ?? 0;
  }

  private step(sign: number, cycles: number): void {
    this.place += sign;
    this.steps += sign;
    this.setLines(this.lines);
    this.pass(cycles);
  }

  private pass(cycles: number): void {
    this.due = Math.max(this.due, this.cpu.cycles - 200) + cycles;
    this.runUntil(this.due);
  }

  private runUntil(cycles: number): void {
    const { cpu } = this;
    while (cpu.cycles < cycles) {
      avrInstruction(cpu);
      cpu.tick();
    }
  }

  private setLines(lines: number): void {
    this.pins.setPin(PINS.a, (lines & 2) !== 0);
    this.pins.setPin(PINS.b, (lines & 1) !== 0);
  }
}
