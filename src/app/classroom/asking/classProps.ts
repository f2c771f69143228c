import type * as z from "zod/mini";
import type { schoolClass } from "../../../school/wire/classWire";
import type { Asking } from "./asking";

/** What each view of a class goes by. */
export interface ClassProps {
  readonly asking: Asking;
  readonly one: Readonly<z.infer<typeof schoolClass>>;
}
