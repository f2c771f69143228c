import * as z from "zod/mini";
import { strict, text, whole } from "../../lock/fieldSchemas";
import { id, moment } from "../../records/fields";
import { shownName } from "../names/shownFields";

/** A class in an address. */
export const classPath = strict({ classId: id });

/** What a class is called. */
export const className = strict({ name: shownName(100) });

/** A class of the school. */
export const schoolClass = strict({
  id: z.string(),
  name: z.string(),
  createdAt: moment,
  endedAt: z.nullable(moment),
  /** How many are in it. */
  people: z.number(),
});

/** Every class of the school, those that ended too. */
export const classList = strict({ classes: z.array(schoolClass) });

/** Longest that a code lives, hours. */
const LONGEST_CODE_HOURS = 14 * 24;

/** How long a new code is to live: a teaching day where nothing is said. */
export const newCode = strict({ hours: z.optional(whole(1, LONGEST_CODE_HOURS)) });

/** A code by which one joins a class, as it is shown: "XK4M-7PQA". */
export const classCode = strict({ code: z.string(), createdAt: moment, expiresAt: moment });

/** Codes of a class by which one can join now. */
export const codeList = strict({ codes: z.array(classCode) });

/** The code that nobody shall join by any more, as it is typed or shown. */
export const revokedCode = strict({ code: text(40) });

/** A bench in an address. */
export const devicePath = strict({ deviceId: id });

/** Benches that joined a class. */
export const deviceList = strict({
  devices: z.array(
    strict({
      id: z.string(),
      /** What its people call it. */
      name: z.string(),
      createdAt: moment,
      /** When it last asked who sits at it. */
      seenAt: moment,
      signedOutAt: z.nullable(moment),
      people: z.array(strict({ id: z.string(), name: z.string() })),
    }),
  ),
});
