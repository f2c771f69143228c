import { encode } from "uqr";

/** A QR code as one path of an SVG picture. */
export interface QrPicture {
  /** Modules of a side, the quiet zone included. */
  readonly size: number;
  /** Path data; one unit is a module. */
  readonly path: string;
}

/** Modules of quiet around the code, as ISO/IEC 18004 asks. */
const QUIET = 4;

/** Bytes that the largest code of the lowest correction level holds (ISO/IEC 18004, version 40-L). */
const MOST_BYTES = 2953;

const rowPath = (row: readonly boolean[], y: number) =>
  row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : "")).join("");

/**
 * The QR code of a text.
 *
 * @returns null for a text that no code can hold
 */
export function qrPicture(text: string): QrPicture | null {
  if (new TextEncoder().encode(text).length > MOST_BYTES) return null;
  const { data, size } = encode(text, { ecc: "L", border: QUIET });
  return { size, path: data.map(rowPath).join("") };
}
