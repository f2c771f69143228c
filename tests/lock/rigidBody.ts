import { type Body, Circle, RevoluteJoint, Settings, Vec2, World } from "planck";
import type { Graduations } from "../../src/lock/dial";

/** Distance of every pin from the spindle, meters of the engine. */
const PIN_CIRCLE = 10;
/** Length of an engine step, seconds; only the angle turned in a step matters. */
const STEP = 1 / 60;
/** So strong that a wheel left alone loses its speed within one step. */
const SPINDLE_DAMPING = 1e6;
const SETTLING_STEPS = 40;

/** What a pack of discs is made of. */
export interface RigidPackShape {
  /** Graduations in one turn of the dial. */
  readonly perTurn: number;
  /** Radius of the two pins by which each wheel meets its driver, wheel 1 first, meters; the pins stand 10 m out. */
  readonly pinRadii: readonly number[];
  /** Whether a movable fly is hung between every driver and its wheel. */
  readonly hasFlies?: boolean;
}

/** Angle between the centers of two pins that touch, radians. */
const touchingAngle = (pinRadius: number) => 2 * Math.asin(pinRadius / PIN_CIRCLE);

/**
 * Play that two equal pins leave each other, from the width of the pins alone: a whole turn less one touching angle on
 * either side.
 */
export function playOfPins(pinRadius: number, perTurn: number): Graduations {
  return perTurn * (1 - touchingAngle(pinRadius) / Math.PI);
}

/**
 * Turning that a step may cover, graduations: with less, a pin that has run into another is still on the near side of
 * it, and is pushed back and not through.
 */
export function farthestStep(pinRadius: number, perTurn: number): Graduations {
  return (perTurn * touchingAngle(pinRadius)) / (2 * Math.PI);
}

/**
 * How far the engine may misplace a wheel. Its solver takes contacts as solved when no two shapes overlap by more than
 * three of its slops (5 mm each), so every meeting of pins may be off by as much, seen from the spindle.
 *
 * @param meetings - pairs of pins between the dial and the wheel
 */
export function engineSlop(meetings: number, perTurn: number): Graduations {
  const atOneMeeting = (3 * Settings.linearSlop) / PIN_CIRCLE;
  return (meetings * atOneMeeting * perTurn) / (2 * Math.PI);
}

/**
 * Discs with pins on one spindle, moved by a general rigid-body engine that knows nothing of locks: contacts between
 * pins, a joint at the center, damping, no gravity. The judge of the wheel pack.
 *
 * Angles are given so that a wheel stands at its driver's position when the driver, turning left, carries it.
 */
export class RigidPack {
  private readonly world = new World({
    gravity: Vec2(0, 0),
    allowSleep: false,
    // Pushes remembered from the step before would carry the discs on when the hand stops.
    warmStarting: false,
    continuousPhysics: false,
  });
  private readonly ground = this.world.createBody();
  private readonly perTurn: number;
  private readonly cam: Body;
  /** Wheel 1 first. */
  private readonly wheelBodies: Body[] = [];
  private bits = 0;
  private discs = 0;

  /** All discs start at position 0, each resting on its driver. */
  constructor({ perTurn, pinRadii, hasFlies = false }: RigidPackShape) {
    this.perTurn = perTurn;
    this.cam = this.world.createBody({ type: "kinematic" });
    let driver = this.cam;
    for (const pinRadius of pinRadii.toReversed()) {
      const wheel = this.disc();
      if (hasFlies) this.hangFly(driver, wheel, pinRadius);
      else this.meet({ body: driver, at: [0] }, { body: wheel, at: [touchingAngle(pinRadius)] }, pinRadius);
      this.wheelBodies.unshift(wheel);
      driver = wheel;
    }
  }

  /** Where the dial stands, graduations. */
  get dial(): Graduations {
    return this.toGraduations(this.cam.getAngle());
  }

  /** Where the wheels stand, wheel 1 first, unwrapped graduations. */
  wheels(): Graduations[] {
    return this.wheelBodies.map((wheel) => this.toGraduations(wheel.getAngle()));
  }

  /**
   * Turns the dial and lets the engine settle.
   *
   * @param farthest - most graduations a step may cover, see `farthestStep`
   */
  turnTo(dial: Graduations, farthest: Graduations): void {
    const steps = Math.ceil(Math.abs(dial - this.dial) / farthest);
    const each = (dial - this.dial) / steps;
    for (let step = 0; step < steps; step++) this.step(each);
    for (let step = 0; step < SETTLING_STEPS; step++) this.step(0);
  }

  /** One step of the engine, with the dial turned by so many graduations in it. */
  step(by: Graduations, velocityIterations = 40, positionIterations = 10): void {
    this.cam.setAngularVelocity((by * 2 * Math.PI) / this.perTurn / STEP);
    this.world.step(STEP, velocityIterations, positionIterations);
  }

  private toGraduations(angle: number): Graduations {
    return (angle * this.perTurn) / (2 * Math.PI);
  }

  private disc(): Body {
    const body = this.world.createBody({ type: "dynamic", angularDamping: SPINDLE_DAMPING });
    // All the weight is in a core that touches nothing, so that the disc is balanced on its spindle. Each disc is
    // lighter than the one that drives it: a push then runs out to wheel 1 and hardly back, and the solver converges.
    body.createFixture({ shape: new Circle(PIN_CIRCLE / 2), density: 4 ** -this.discs++, filterMaskBits: 0 });
    this.world.createJoint(new RevoluteJoint({}, this.ground, body, Vec2(0, 0)));
    return body;
  }

  /** Pins of two bodies, at local angles, that meet each other and nothing else. */
  private meet(one: PinnedBody, other: PinnedBody, pinRadius: number): void {
    const [bitOfOne, bitOfOther] = [1 << this.bits++, 1 << this.bits++];
    addPins(one, pinRadius, { filterCategoryBits: bitOfOne, filterMaskBits: bitOfOther });
    addPins(other, pinRadius, { filterCategoryBits: bitOfOther, filterMaskBits: bitOfOne });
  }

  /** A fly moves on its wheel between two stops, by as much as the widths of the pins take from a whole turn. */
  private hangFly(driver: Body, wheel: Body, pinRadius: number): void {
    const fly = this.disc();
    const width = touchingAngle(pinRadius);
    this.meet({ body: driver, at: [0] }, { body: fly, at: [width] }, pinRadius);
    this.meet({ body: fly, at: [0] }, { body: wheel, at: [width, -3 * width] }, pinRadius);
  }
}

interface PinnedBody {
  readonly body: Body;
  readonly at: readonly number[];
}

interface PinFilter {
  readonly filterCategoryBits: number;
  readonly filterMaskBits: number;
}

function addPins({ body, at }: PinnedBody, pinRadius: number, filter: PinFilter): void {
  for (const angle of at) {
    const center = Vec2(PIN_CIRCLE * Math.cos(angle), PIN_CIRCLE * Math.sin(angle));
    body.createFixture({ shape: new Circle(center, pinRadius), density: 0, friction: 0, restitution: 0, ...filter });
  }
}
