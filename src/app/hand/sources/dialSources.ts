import { BUTTONS } from "./buttons";
import { DEVICE } from "./device";
import type { DialSource } from "./dialSource";
import { KEYS } from "./keys";
import { POINTER } from "./pointer";
import { WHEEL } from "./wheel";

/** Every way to turn a dial. One more is one more line here, and it works wherever there is a dial. */
export const DIAL_SOURCES: readonly DialSource[] = [POINTER, KEYS, WHEEL, BUTTONS, DEVICE];
