import type * as z from "zod/mini";
import type { schoolClass } from "../../../school/wire/classWire";
import type { Asking } from "./asking";

/** A class, and how to ask about it. */
export interface OfClass {
  readonly asking: Asking;
  readonly one: Readonly<z.infer<typeof schoolClass>>;
}

/** What each view of a class goes by. */
export interface ClassProps extends OfClass {
  /** What else the address asks for. */
  readonly query: URLSearchParams;
}
