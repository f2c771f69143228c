import type { OptionValues } from "./terminal/command";
import { usageError } from "./terminal/usageError";

/**
 * A number given as an option.
 *
 * @param otherwise - where the option is left out; without it the option must be given
 * @returns finite
 * @throws {UsageError} when it is missing or no number
 */
export function numberOption(options: OptionValues, name: string, otherwise?: number): number {
  const value = options[name] ?? otherwise;
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  if (typeof number === "number" && Number.isFinite(number)) return number;
  throw value === undefined
    ? usageError("missing", [`--${name}`])
    : usageError("number", [`--${name}`], { found: value });
}

/**
 * A whole number given as an option, within limits.
 *
 * @throws {UsageError} when it is missing, no whole number, or outside
 */
export function wholeOption(
  options: OptionValues,
  name: string,
  { least, most, otherwise }: { readonly least: number; readonly most: number; readonly otherwise: number },
): number {
  const number = numberOption(options, name, otherwise);
  if (Number.isInteger(number) && number >= least && number <= most) return number;
  throw usageError("whole", [`--${name}`], { low: least, high: most, found: number });
}
