import type { CDPSession, Page } from "@playwright/test";
import type { Graduations } from "../../src/lock/dial";
import type { Bench } from "./bench";

/** A way to turn the dial on the page, by real input. */
export interface Hand {
  /** @param by - graduations, left positive */
  turnBy(by: Graduations): Promise<void>;
}

/** How many of each step make a move: turns, tens, ones and tenths. */
export function stepsOf(by: Graduations, perTurn: number): readonly [number, number, number, number] {
  const tenths = Math.round(Math.abs(by) * 10);
  const inTurn = tenths % (perTurn * 10);
  return [Math.floor(tenths / (perTurn * 10)), Math.floor(inTurn / 100), Math.floor((inTurn % 100) / 10), inTurn % 10];
}

/** Keys for a step of ten (with Shift a whole turn), of one and of a tenth. */
export const LEFT_KEYS = ["PageUp", "ArrowLeft", ","] as const;
export const RIGHT_KEYS = ["PageDown", "ArrowRight", "."] as const;

/** Keys: whole turns, tens, ones and tenths. The dial takes the focus first. */
export class KeyHand implements Hand {
  protected readonly bench: Bench;
  private readonly perTurn: number;

  constructor(bench: Bench, perTurn: number) {
    this.bench = bench;
    this.perTurn = perTurn;
  }

  async turnBy(by: Graduations): Promise<void> {
    const { dial, page } = this.bench;
    const [turns, tens, ones, tenths] = stepsOf(by, this.perTurn);
    const [page10, arrow, nudge] = by > 0 ? LEFT_KEYS : RIGHT_KEYS;
    await dial.focus();
    // Typed in one go. Besides being fast, no key is held while the page is busy: a held arrow key would go on turning.
    const typed: Promise<void>[] = [];
    const type = (key: string, count: number) => {
      for (let i = 0; i < count; i++) typed.push(page.keyboard.down(key), page.keyboard.up(key));
    };
    typed.push(page.keyboard.down("Shift"));
    type(page10, turns);
    typed.push(page.keyboard.up("Shift"));
    type(page10, tens);
    type(arrow, ones);
    type(nudge, tenths);
    await Promise.all(typed);
  }
}

const SIZES = ["1 turn", "10", "1", "0.1"];

/** The turn buttons alone. */
export class ButtonHand implements Hand {
  private readonly bench: Bench;
  private readonly perTurn: number;

  constructor(bench: Bench, perTurn: number) {
    this.bench = bench;
    this.perTurn = perTurn;
  }

  async turnBy(by: Graduations): Promise<void> {
    const way = by > 0 ? "Left" : "Right";
    for (const [k, count] of stepsOf(by, this.perTurn).entries()) {
      const button = this.bench.button(`${way} by ${SIZES[k]}`);
      for (let i = 0; i < count; i++) await button.click();
    }
  }
}

/** One thing that points: it comes down, moves and goes up. CSS pixels. */
export interface Pointer {
  down(x: number, y: number): Promise<void>;
  move(x: number, y: number): Promise<void>;
  up(): Promise<void>;
}

export function mouse(page: Page): Pointer {
  return {
    down: async (x, y) => {
      await page.mouse.move(x, y);
      await page.mouse.down();
    },
    move: (x, y) => page.mouse.move(x, y),
    up: () => page.mouse.up(),
  };
}

/** Fingers on a touch screen. Several share one session, as the browser wants every finger in each event. */
export class Fingers {
  private readonly session: CDPSession;
  private readonly points = new Map<number, { readonly x: number; readonly y: number }>();

  constructor(session: CDPSession) {
    this.session = session;
  }

  finger(id: number): Pointer {
    const put = async (type: "touchStart" | "touchMove", x: number, y: number) => {
      this.points.set(id, { x, y });
      const touchPoints = [...this.points].map(([one, point]) => ({ id: one, ...point }));
      await this.session.send("Input.dispatchTouchEvent", { type, touchPoints });
    };
    return {
      down: (x, y) => put("touchStart", x, y),
      move: (x, y) => put("touchMove", x, y),
      up: async () => {
        const { x, y } = this.points.get(id) ?? { x: 0, y: 0 };
        this.points.delete(id);
        // An end names the fingers that leave; the others stay down.
        await this.session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [{ id, x, y }] });
      },
    };
  }
}

export function pen(session: CDPSession): Pointer {
  let at = { x: 0, y: 0 };
  const tell = (type: "mousePressed" | "mouseMoved" | "mouseReleased", buttons: number) =>
    session.send("Input.dispatchMouseEvent", {
      type,
      ...at,
      button: type === "mouseMoved" ? "none" : "left",
      buttons,
      clickCount: type === "mouseMoved" ? 0 : 1,
      pointerType: "pen",
    });
  return {
    down: async (x, y) => {
      at = { x, y };
      await tell("mouseMoved", 0);
      await tell("mousePressed", 1);
    },
    move: async (x, y) => {
      at = { x, y };
      await tell("mouseMoved", 1);
    },
    up: async () => {
      await tell("mouseReleased", 0);
    },
  };
}

/** Longest move along the rim, part of a turn; well below the half turn that a single event can tell. */
const ARC = 1 / 12;
/** The last part of a move is made farther out, where a pixel turns less, in short arcs. Graduations. */
const FINE = 5;
const FINE_ARC: Graduations = 1;

/** Where a dial is on the screen, CSS pixels. */
export interface DialPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export async function placeOf({ dial }: Bench): Promise<DialPlace> {
  const box = await dial.boundingBox();
  if (box === null) throw new Error("the dial is not on the screen");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, radius: box.width / 2 };
}

/**
 * A hand that holds the rim and goes round and round with it.
 *
 * It works on whole pixels, as a mouse does. To stop exactly it moves outward over the last few graduations, as a
 * person would; the dial then ends within a pixel's worth of the wish, and misses do not add up, as every move aims
 * from where the hand first took hold.
 */
export class RoundHand implements Hand {
  private readonly bench: Bench;
  private readonly pointer: Pointer;
  private readonly perTurn: number;
  private place: DialPlace | null = null;
  /** How far round the hand is, graduations; 0 is straight up, left positive. */
  private angle: Graduations = 0;

  constructor(bench: Bench, pointer: Pointer, perTurn: number) {
    this.bench = bench;
    this.pointer = pointer;
    this.perTurn = perTurn;
  }

  async turnBy(by: Graduations): Promise<void> {
    const place = this.place ?? (await this.takeHold());
    const goal = this.angle + by;
    const fine = Math.min(Math.abs(by), FINE) * Math.sign(by);
    await this.goRound(goal - fine, place.radius * RIM, this.perTurn * ARC);
    await this.goRound(goal, this.farOut(place, goal), FINE_ARC);
    await this.goRound(goal, place.radius * RIM, FINE_ARC);
  }

  async letGo(): Promise<void> {
    this.place = null;
    await this.pointer.up();
  }

  private async takeHold(): Promise<DialPlace> {
    const place = await placeOf(this.bench);
    this.place = place;
    this.angle = 0;
    await this.pointer.down(Math.round(place.x), Math.round(place.y - place.radius * RIM));
    return place;
  }

  private async goRound(goal: Graduations, radius: number, arc: Graduations): Promise<void> {
    const from = this.angle;
    const count = Math.max(1, Math.ceil(Math.abs(goal - from) / arc));
    for (let i = 1; i <= count; i++) {
      this.angle = from + ((goal - from) * i) / count;
      const { x, y } = this.pointAt(radius);
      await this.pointer.move(Math.round(x), Math.round(y));
    }
  }

  private pointAt(radius: number) {
    const { x, y } = this.place ?? { x: 0, y: 0 };
    const radians = (this.angle / this.perTurn) * 2 * Math.PI;
    return { x: x - radius * Math.sin(radians), y: y - radius * Math.cos(radians) };
  }

  /** As far out as the window lets the hand go. */
  private farOut({ x, y, radius }: DialPlace, angle: Graduations): number {
    const { width, height } = this.bench.page.viewportSize() ?? { width: 1280, height: 800 };
    const radians = (angle / this.perTurn) * 2 * Math.PI;
    const across = Math.abs((Math.sin(radians) > 0 ? x : width - x) / Math.sin(radians));
    const down = Math.abs((Math.cos(radians) > 0 ? y : height - y) / Math.cos(radians));
    return Math.max(radius * RIM, Math.min(radius * 1.6, across - 4, down - 4));
  }
}

/** Where the hand holds the dial, part of its radius: on the numbers. */
export const RIM = 0.8;
