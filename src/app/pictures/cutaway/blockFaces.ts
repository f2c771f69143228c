import { corners, type Point, project, type Scene, THICKNESS } from "./packScene";

/** The three faces of a block that one sees, as corners of polygons. */
export interface Block {
  readonly front: string;
  readonly top: string;
  readonly end: string;
}

/** Where a block lies: x and y from and to, its depth, and how many times as thick as a disc it is. */
export interface BlockPlace {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z?: number;
  readonly thick?: number;
}

/** The faces of a block. */
export function blockFaces(scene: Scene, { x, y, z = 0, thick = 1 }: BlockPlace): Block {
  const back = (point: Point): Point => ({ x: point.x + THICKNESS.x * thick, y: point.y + THICKNESS.y * thick });
  const lowLeft = project(scene, x[0], y[0], z);
  const lowRight = project(scene, x[1], y[0], z);
  const highLeft = project(scene, x[0], y[1], z);
  const highRight = project(scene, x[1], y[1], z);
  return {
    front: corners([lowLeft, lowRight, highRight, highLeft]),
    top: corners([highLeft, highRight, back(highRight), back(highLeft)]),
    end: corners([lowRight, highRight, back(highRight), back(lowRight)]),
  };
}
