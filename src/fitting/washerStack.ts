/** What lies between the cam and its seat, in order from the cam. */
export type Washer = "flat" | "spring";

/** Sizes of the washers and of the room that they lie in. */
export interface WasherSizes {
  /** Thickness of a flat one, millimeters. */
  readonly flat_mm: number;
  /** Height of a spring washer that nothing presses, and pressed flat, millimeters. */
  readonly springFree_mm: number;
  readonly springFlat_mm: number;
  /** Newtons for each millimeter that it is pressed. */
  readonly springRate_N_mm: number;
  /** Room between the cam and its seat, millimeters. */
  readonly room_mm: number;
  /** Friction of steel on a flat washer, and of a spring's edge that scrapes the cam; dimensionless. */
  readonly frictionFlat: number;
  readonly frictionEdge: number;
}

/** What a stack of washers comes to. */
export interface StackFit {
  /** How far the dial can be pushed and pulled without effort, millimeters, >= 0. */
  readonly endPlay_mm: number;
  /** What presses the cam, newtons, >= 0; infinite where the stack does not go into its room. */
  readonly force_N: number;
  /** Friction force on the cam, newtons. */
  readonly friction_N: number;
}

/**
 * End play and friction of a stack.
 *
 * Springs on top of each other share their way and carry the same force (springs in a row: Hooke's law, the rates add as
 * reciprocals). A spring that touches the cam scrapes it with its edge, so the order counts.
 */
export function stackFit(stack: readonly Washer[], sizes: WasherSizes): StackFit {
  const springs = stack.filter((one) => one === "spring").length;
  const flats = stack.length - springs;
  const free_mm = flats * sizes.flat_mm + springs * sizes.springFree_mm;
  const solid_mm = flats * sizes.flat_mm + springs * sizes.springFlat_mm;
  const friction = stack[0] === "spring" ? sizes.frictionEdge : sizes.frictionFlat;
  if (solid_mm > sizes.room_mm) {
    return { endPlay_mm: 0, force_N: Number.POSITIVE_INFINITY, friction_N: Number.POSITIVE_INFINITY };
  }
  const pressed_mm = free_mm - sizes.room_mm;
  if (pressed_mm <= 0) return { endPlay_mm: Math.abs(pressed_mm), force_N: 0, friction_N: 0 };
  const force_N = (sizes.springRate_N_mm / springs) * pressed_mm;
  return { endPlay_mm: 0, force_N, friction_N: friction * force_N };
}
