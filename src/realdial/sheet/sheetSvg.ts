import {
  BASE_HALF,
  DISC_RADIUS,
  INNER_RING,
  KNOB_RADIUS,
  MARKER_CELLS,
  MARKER_SIDE,
  MARKERS,
  type Marker,
  OUTER_RING,
  type Ring,
  TRACKS,
  type Track,
} from "./design";
import { SHEET_WORDS } from "./sheetWords";

/** Paper that people have, in mm. */
export const PAPERS = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;

/** A name of {@link PAPERS}. */
export type Paper = keyof typeof PAPERS;

/** What the disc shows to a person. */
export interface DiscFace {
  readonly graduations: 100 | 60;
  /** Which way its numbers grow. A dial whose numbers grow clockwise shows higher ones as it is turned left. */
  readonly numbers: "clockwise" | "counterclockwise";
}

/** The sheet that stays: markers, index and lines to check the print, drawn to scale as an SVG page. */
export function baseSheetSvg(paper: Paper): string {
  const half = BASE_HALF;
  return page(paper, SHEET_WORDS.base, [
    `<rect x="${-half}" y="${-half}" width="${2 * half}" height="${2 * half}" fill="none" stroke="#999" stroke-width="0.2"/>`,
    ...MARKERS.map(markerSvg),
    `<path d="M0 ${-DISC_RADIUS - 1.5}l-4 -11h8z"/>`,
    `<circle r="${DISC_RADIUS}" fill="none" stroke="#999" stroke-width="0.2"/>`,
    cross,
    checkLine("M-50 88h100", `<text y="86.5">${SHEET_WORDS.scale}</text>`),
    checkLine("M-88 -50v100", `<text transform="translate(-86.5) rotate(90)" y="-3">${SHEET_WORDS.line}</text>`),
  ]);
}

/** The disc that turns, drawn to scale as an SVG page. */
export function discSheetSvg(paper: Paper, face: DiscFace): string {
  return page(paper, SHEET_WORDS.disc, [
    `<circle r="${DISC_RADIUS}" fill="#fff" stroke="#000" stroke-width="0.2"/>`,
    graduationsSvg(face),
    ...[OUTER_RING, INNER_RING].map(ringSvg),
    ...TRACKS.map(trackSvg),
    `<circle r="${KNOB_RADIUS}" fill="none" stroke="#999" stroke-width="0.2" stroke-dasharray="2 2"/>`,
    cross,
    `<text y="${DISC_RADIUS + 8}">${SHEET_WORDS.cut}</text>`,
    checkLine(`M-50 ${DISC_RADIUS + 18}h100`, `<text y="${DISC_RADIUS + 16}">${SHEET_WORDS.scale}</text>`),
  ]);
}

const cross = '<path d="M-3 0h6M0 -3v6" stroke="#000" stroke-width="0.2"/>';

function page(paper: Paper, title: string, parts: readonly string[]): string {
  const { width, height } = PAPERS[paper];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${-width / 2} ${-height / 2} ${width} ${height}" font-family="sans-serif" font-size="3.5" text-anchor="middle">`,
    `<title>${title}</title>`,
    // Else a browser keeps margins of its own, and shrinks the sheet to fit between them.
    `<style>@page{size:${width}mm ${height}mm;margin:0}</style>`,
    `<rect x="${-width / 2}" y="${-height / 2}" width="${width}" height="${height}" fill="#fff"/>`,
    ...parts,
    "</svg>",
  ].join("\n");
}

const checkLine = (line: string, words: string) =>
  `<path d="${line}" fill="none" stroke="#000" stroke-width="0.3" class="check"/>${words}`;

/** Black as a whole, then its white cells, so that no seam shows between black ones. */
function markerSvg({ x, y, code }: Marker): string {
  const cell = MARKER_SIDE / MARKER_CELLS;
  const [left, top] = [x - MARKER_SIDE / 2, y - MARKER_SIDE / 2];
  const white = code.flatMap((row, k) =>
    [...row.matchAll(/\.+/g)].map(
      ({ 0: run, index }) =>
        `M${round(left + (index + 1) * cell)} ${round(top + (k + 1) * cell)}h${round(run.length * cell)}v${round(cell)}h${round(-run.length * cell)}z`,
    ),
  );
  return `<rect x="${left}" y="${top}" width="${MARKER_SIDE}" height="${MARKER_SIDE}"/><path fill="#fff" d="${white.join("")}"/>`;
}

const ringSvg = ({ inner, outer }: Ring) =>
  `<circle r="${(inner + outer) / 2}" fill="none" stroke="#000" stroke-width="${outer - inner}"/>`;

/** Black is where cos(cycles · angle) is below 0: the middle half of each cycle. */
function trackSvg({ cycles, inner, outer }: Track): string {
  const quarter = Math.PI / 2 / cycles;
  const sectors = Array.from({ length: cycles }, (_, k) => {
    const [from, to] = [(4 * k + 1) * quarter, (4 * k + 3) * quarter];
    return `M${at(inner, from)}L${at(outer, from)}A${outer} ${outer} 0 0 1 ${at(outer, to)}L${at(inner, to)}A${inner} ${inner} 0 0 0 ${at(inner, from)}z`;
  });
  return `<path d="${sectors.join("")}"/>`;
}

function graduationsSvg({ graduations, numbers }: DiscFace): string {
  const every = graduations === 100 ? 10 : 5;
  const lines = Array.from({ length: graduations }, (_, k) => {
    const length = k % every === 0 ? 6 : k % 5 === 0 ? 4.5 : 3;
    const angle = (2 * Math.PI * k) / graduations;
    return `M${at(DISC_RADIUS - 0.5, angle)}L${at(DISC_RADIUS - 0.5 - length, angle)}`;
  });
  const sign = numbers === "clockwise" ? 1 : -1;
  const texts = Array.from({ length: graduations / every }, (_, k) => {
    const turn = (sign * 360 * every * k) / graduations;
    return `<text transform="rotate(${turn})" y="${-DISC_RADIUS + 11.5}">${every * k}</text>`;
  });
  return `<path d="${lines.join("")}" stroke="#000" stroke-width="0.5"/><g font-size="5">${texts.join("")}</g>`;
}

/** A point at a radius and an angle clockwise from up, as a path has it. */
const at = (radius: number, angle: number) => `${round(radius * Math.sin(angle))} ${round(-radius * Math.cos(angle))}`;

/** To a thousandth of a mm. */
const round = (mm: number) => Math.round(1000 * mm) / 1000;
