import { DEVICE_SLOT } from "../../deviceSlot";

/** The address of the setup, for the dial on the screen, from where the way leads back to here. */
export function setupHere(): string {
  const query = new URLSearchParams({ back: location.hash });
  if (DEVICE_SLOT.dial?.perTurn === 60) query.set("graduations", "60");
  return `#/dial?${query}`;
}
