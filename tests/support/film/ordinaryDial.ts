import { numberPath } from "./strokeDigits";
import { type Texture, textureOfSvg } from "./texture";

/** How an ordinary dial looks. Millimeters; reflectance by gray, 0 to 255. */
export interface DialLook {
  readonly radius: number;
  readonly graduations: number;
  /** A number at each so many graduations; 0 for a dial without numbers. */
  readonly numbered: number;
  /** 1 when numbers grow to the right around the dial, as most do; -1 to the left. */
  readonly sense: 1 | -1;
  readonly face: number;
  readonly ink: number;
}

/** A black dial with white marks. */
export const BLACK_DIAL: DialLook = {
  radius: 40,
  graduations: 100,
  numbered: 10,
  sense: 1,
  face: 40,
  ink: 235,
};

/** A printed one. */
export const PAPER_DIAL: DialLook = { ...BLACK_DIAL, face: 240, ink: 30 };

/**
 * The face of a dial of no particular make: a mark for each graduation, longer at fives and tens, and numbers.
 *
 * Its 0 is at the top, and it is turned left (counterclockwise) to bring higher numbers there when they grow to the right.
 */
export function dialTexture(look: DialLook, texelsPerMm: number): Texture {
  const size = 2 * look.radius + 4;
  return textureOfSvg(dialSvg(look), size, texelsPerMm);
}

function dialSvg({ radius, graduations, numbered, sense, face, ink }: DialLook): string {
  const half = radius + 2;
  const step = 360 / graduations;
  const marks = Array.from({ length: graduations }, (_, i) => {
    const long = i % 10 === 0 ? 0.13 : i % 5 === 0 ? 0.1 : 0.07;
    const wide = (i % 10 === 0 ? 0.24 : 0.18) * ((2 * Math.PI * radius) / graduations);
    return `<path transform="rotate(${sense * i * step})" d="M0 ${-0.985 * radius}V${-(0.985 - long) * radius}" stroke-width="${wide}"/>`;
  });
  const numbers = Array.from({ length: numbered === 0 ? 0 : graduations / numbered }, (_, i) => {
    const number = i * numbered;
    return `<g transform="rotate(${sense * number * step}) translate(0 ${-0.77 * radius})">${numberPath(number, 0.11 * radius)}</g>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-half} ${-half} ${2 * half} ${2 * half}">
<circle r="${half}" fill="${gray(face)}"/><g stroke="${gray(ink)}" fill="none">${marks.join("")}${numbers.join("")}</g></svg>`;
}

const gray = (value: number) => `rgb(${value},${value},${value})`;

/** How the door around a dial looks. */
export interface DoorLook {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Radius of the dial on it, and of the ring with the index around it, millimeters. */
  readonly dialRadius: number;
  readonly ringRadius: number;
  readonly paint: number;
  readonly ring: number;
  readonly ink: number;
  /** Scratches, screws and stickers: how many. */
  readonly scratches: number;
  readonly chance: () => number;
}

/** A door of gray paint with a ring around the dial, its index at the top, and what a used door has. */
export function doorTexture(look: DoorLook, texelsPerMm: number): Texture {
  const { widthMm: width, heightMm: height, dialRadius, ringRadius, chance } = look;
  const somewhere = () => [(chance() - 0.5) * width, (chance() - 0.5) * height] as const;
  const scratches = Array.from({ length: look.scratches }, () => {
    const [x, y] = somewhere();
    const shade = gray(Math.round(look.paint * (0.5 + chance())));
    return `<path d="M${x} ${y}l${(chance() - 0.5) * 30} ${(chance() - 0.5) * 30}" stroke="${shade}" stroke-width="${0.3 + chance()}"/>`;
  });
  const screws = [-1, 1].flatMap((sx) =>
    [-1, 1].map((sy) => {
      const [x, y] = [0.75 * ringRadius * sx, 0.75 * ringRadius * sy];
      return `<circle cx="${x}" cy="${y}" r="2.4" fill="#777"/><path d="M${x - 2} ${y - 0.6}l4 1.2" stroke="#222" stroke-width="0.8"/>`;
    }),
  );
  const index = `<path d="M0 ${-dialRadius - 0.6}l-1.6 -6h3.2z" fill="${gray(look.ink)}"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-width / 2} ${-height / 2} ${width} ${height}">
<rect x="${-width / 2}" y="${-height / 2}" width="${width}" height="${height}" fill="${gray(look.paint)}"/>
${scratches.join("")}<circle r="${ringRadius}" fill="${gray(look.ring)}" stroke="#333" stroke-width="0.5"/>${screws.join("")}${index}</svg>`;
  return textureOfSvg(svg, width, texelsPerMm);
}
