import type { ColumnType } from "kysely";

/** A moment, milliseconds since 1970. Both databases give it as a number (`int8` below 2 to the 53rd). */
export type Moment = number;

/** A column that a row may be made without; it is null then. */
export type Maybe<Value> = ColumnType<Value | null, Value | null | undefined, Value | null>;
