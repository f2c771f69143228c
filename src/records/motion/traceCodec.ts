import { deflateSync } from "fflate";
import type { AttemptStart } from "../../dialing/attemptStart";
import { STEPS_PER_GRADUATION } from "../../dialing/hand/keptPosition";
import type { Motion } from "../../dialing/motion";
import { FARTHEST } from "../../lock/wheelPackState";
import { inflateBounded } from "../../trace/inflateBounded";
import { motionError, motionProblem, unreadable } from "../motionError";
import { fromBase64, toBase64 } from "./base64";
import { Packer, Unpacker } from "./packing";

const FORMAT = 1;
const HEADER_BYTES = 5;
/** Raw bytes that a trace may have: nine hours at 60 moves a second. */
const MOST_BYTES = 1 << 23;

/** Which optional parts a trace has, as bits. */
const HAS_START = 1;
const HAS_SLACK = 2;
const HAS_MEMORY = 4;
const IS_WAITING = 8;
const HAS_TIMES = 16;

function partsOf({ start, times_ms }: Motion): number {
  const isWaiting = start?.memory !== undefined && start.memory.waitsUntil_ms !== null;
  return (
    (start ? HAS_START : 0) |
    (start?.slack ? HAS_SLACK : 0) |
    (start?.memory ? HAS_MEMORY : 0) |
    (isWaiting ? IS_WAITING : 0) |
    (times_ms ? HAS_TIMES : 0)
  );
}

function packStart(packer: Packer, { dial, slack, memory }: AttemptStart): void {
  packer.number(dial);
  if (slack) {
    packer.number(slack.length);
    for (const one of slack) packer.number(one);
  }
  if (memory) {
    packer.number(memory.wrongTries);
    if (memory.waitsUntil_ms !== null) packer.number(memory.waitsUntil_ms);
  }
}

function unpackStart(unpacker: Unpacker, parts: number): AttemptStart {
  const dial = unpacker.number();
  const slack = parts & HAS_SLACK ? Array.from({ length: unpacker.count() }, () => unpacker.number()) : undefined;
  if (!(parts & HAS_MEMORY)) return { dial, ...(slack && { slack }) };
  const wrongTries = unpacker.number();
  const memory = { wrongTries, waitsUntil_ms: parts & IS_WAITING ? unpacker.number() : null };
  return { dial, ...(slack && { slack }), memory };
}

function checkMotion({ positions, times_ms }: Motion): void {
  if (!positions.every((position) => Math.abs(position) <= FARTHEST)) {
    throw motionError("motion-beyond", []);
  }
  const isPaired = times_ms === undefined || times_ms.length === positions.length;
  if (!isPaired) throw motionError("motion-times", []);
  const isRising = times_ms?.every((time, i) => Number.isFinite(time) && time >= (times_ms[i - 1] ?? time)) ?? true;
  if (!isRising) throw motionError("motion-times-fall", []);
}

/**
 * Packs a motion: whole steps of 1/64 graduation and 1 ms, as differences of 16 bits, deflated.
 *
 * A larger step stands in full beside them, so any motion can be kept.
 *
 * @returns bytes that `decodeTrace` reads
 * @throws {MotionError} `bad-trace` for a motion that is none
 */
export function encodeTrace(motion: Motion): Uint8Array {
  checkMotion(motion);
  const { start, positions, times_ms } = motion;
  const packer = new Packer();
  packer.number(partsOf(motion));
  packer.number(positions.length);
  if (start) packStart(packer, start);
  packer.row(positions.map((position) => Math.round(position * STEPS_PER_GRADUATION)));
  if (times_ms) packer.row(times_ms.map(Math.round));
  const raw = packer.bytes();
  if (raw.length > MOST_BYTES) throw motionError("motion-too-long", []);
  const packed = deflateSync(raw, { level: 9 });
  const bytes = new Uint8Array(HEADER_BYTES + packed.length);
  bytes[0] = FORMAT;
  new DataView(bytes.buffer).setUint32(1, raw.length, true);
  bytes.set(packed, HEADER_BYTES);
  return bytes;
}

/**
 * Raw bytes that a packed motion says it has.
 *
 * @throws {MotionError} `bad-trace` for bytes that are none, or are too many
 */
export function unpackedSize(bytes: Uint8Array): number {
  if (bytes.length < HEADER_BYTES) throw unreadable("trace-too-short");
  if (bytes[0] !== FORMAT) {
    const why = motionProblem("trace-format", [], { format: bytes[0], latest: FORMAT });
    throw motionError("bad-trace", [], { why });
  }
  const size = new DataView(bytes.buffer, bytes.byteOffset).getUint32(1, true);
  if (size > MOST_BYTES)
    throw motionError("bad-trace", [], { why: motionProblem("trace-longer", [], { most: MOST_BYTES }) });
  return size;
}

/** Unpacks no more than the trace says it has, so that a small trace cannot fill the memory. */
function inflated(bytes: Uint8Array): Uint8Array {
  const size = unpackedSize(bytes);
  let raw: Uint8Array;
  try {
    raw = inflateBounded(bytes.subarray(HEADER_BYTES), size);
  } catch {
    throw unreadable("trace-damaged");
  }
  if (raw.length !== size) throw unreadable("trace-length");
  return raw;
}

/**
 * Reads a packed motion.
 *
 * @throws {MotionError} `bad-trace` for bytes that are none
 */
export function decodeTrace(bytes: Uint8Array): Motion {
  const unpacker = new Unpacker(inflated(bytes));
  const parts = unpacker.number();
  const count = unpacker.count();
  const start = parts & HAS_START ? unpackStart(unpacker, parts) : undefined;
  const positions = unpacker.row(count).map((step) => step / STEPS_PER_GRADUATION);
  const times_ms = parts & HAS_TIMES ? unpacker.row(count) : undefined;
  unpacker.end();
  const motion = { ...(start && { start }), positions, ...(times_ms && { times_ms }) };
  checkMotion(motion);
  return motion;
}

/** A packed motion as text, for JSON. */
export const motionText = (motion: Motion): string => toBase64(encodeTrace(motion));

/** The motion of a text that `motionText` made. @throws {MotionError} `bad-trace` */
export const motionOfText = (text: string): Motion => decodeTrace(fromBase64(text));
