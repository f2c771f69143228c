/** Lowest and highest place of an operable part above the floor, inches. Source: 2010 ADA Standards 404.2.7, 309.4. */
export const ACCESSIBLE_HEIGHT_IN = { low: 34, high: 48 } as const;

/** Whether a height lies in the accessibility range, both ends included. @param height_in - inches */
export function isInRange(height_in: number): boolean {
  return height_in >= ACCESSIBLE_HEIGHT_IN.low && height_in <= ACCESSIBLE_HEIGHT_IN.high;
}
