import * as z from "zod/mini";
import { oneOf, strict } from "../lock/fieldSchemas";
import { FAULTS_ABOUT, PLAIN_FAULTS } from "./visitFaultCode";

const about = <Code extends keyof typeof FAULTS_ABOUT>(code: Code) =>
  strict({ code: z.literal(code), about: oneOf<(typeof FAULTS_ABOUT)[Code]>(FAULTS_ABOUT[code]) });

/** A fault of a visit, as a file has it. */
export const visitFaultSchema = z.union([
  strict({ code: oneOf(PLAIN_FAULTS), about: z.null() }),
  about("not-asked"),
  about("section-not-read"),
  about("acted-without-instructions"),
  about("look-left-out"),
  about("not-measured"),
  about("changed-sound"),
  about("left-wrong"),
  about("made-wrong"),
  about("missed-in-record"),
  about("invented-in-record"),
]);
