const POLYNOMIAL = 0xedb88320;

/** What each byte leaves behind. */
const LEFT = Int32Array.from({ length: 256 }, (_, byte) => {
  let left = byte;
  for (let bit = 0; bit < 8; bit++) left = (left >>> 1) ^ (left & 1 ? POLYNOMIAL : 0);
  return left;
});

/**
 * The usual CRC-32 (reflected, polynomial 04C11DB7, begun with and ended by all ones), as in ISO 3309 and in gzip (RFC 1952,
 * section 8). Of "123456789" it is cbf43926.
 *
 * An exclusive or of 8 bits, as many such lines have it, lets two errors in the same bit pass, and one in 256 of all damaged lines.
 *
 * @param text - characters below 128
 * @returns in [0, 2^32)
 */
export function crc32(text: string): number {
  let crc = -1;
  for (let k = 0; k < text.length; k++) crc = (crc >>> 8) ^ (LEFT[(crc ^ text.charCodeAt(k)) & 0xff] ?? 0);
  return ~crc >>> 0;
}
