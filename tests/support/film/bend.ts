import type { Curl } from "./scene";

/** A bent sheet: a parabola along one direction. */
export interface Bend {
  readonly alongX: number;
  readonly alongY: number;
  readonly perSquare: number;
}

/** A curl, ready to be asked. */
export const bendOf = (curl: Curl | undefined): Bend => ({
  alongX: Math.cos(((curl?.direction ?? 0) * Math.PI) / 180),
  alongY: Math.sin(((curl?.direction ?? 0) * Math.PI) / 180),
  perSquare: (curl?.rise ?? 0) / 10_000,
});

/** How far it rises at a point of it. */
export const riseAt = (bend: Bend, x: number, y: number): number => {
  const along = x * bend.alongX + y * bend.alongY;
  return bend.perSquare * along * along;
};
