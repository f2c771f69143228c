import { problemAnswer } from "../../school/wire/problemWire";

/** Answers that every route may have: what is wrong, as data. */
export const refusals = { "4xx": problemAnswer, "5xx": problemAnswer } as const;
