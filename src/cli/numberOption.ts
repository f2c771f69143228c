import type { OptionValues } from "./command";
import { UsageError } from "./usageError";

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
  throw new UsageError(value === undefined ? `--${name} is missing` : `--${name} must be a number, not "${value}"`);
}
