import * as z from "zod/mini";
import { oneOf, strict, text } from "../../lock/fieldSchemas";
import { id, moment } from "../../records/fields";
import { shownName } from "../names/shownFields";
import { newLogin, newPassword, token } from "./peopleWire";

const role = oneOf(["head", "instructor"]);

/** Whom the head invites. */
export const invitation = strict({ role });

/** An invitation as it is made: its secret is shown this once. */
export const madeLink = strict({ id: z.string(), token: z.string(), expiresAt: moment });

/** Links that nobody used yet. @see madeLink */
export const openLinks = strict({
  links: z.array(
    strict({
      id: z.string(),
      role,
      /** Whose password it sets anew; null where it makes an instructor. */
      instructor: z.nullable(strict({ id: z.string(), name: z.string() })),
      createdAt: moment,
      expiresAt: moment,
    }),
  ),
});

/** Somebody makes themselves an instructor, by the link that the head gave them. */
export const signUp = strict({ token, name: shownName(100), login: newLogin, password: newPassword });

/** Everybody who teaches, or did. */
export const instructorList = strict({
  instructors: z.array(
    strict({
      id: z.string(),
      name: z.string(),
      login: z.string(),
      role,
      createdAt: moment,
      disabledAt: z.nullable(moment),
    }),
  ),
});

/** A new password, by who knows the one that holds. */
export const passwordChange = strict({ password: text(200), next: newPassword });

/** A new password, by the link that the head gave to who forgot theirs. */
export const passwordByLink = strict({ token, password: newPassword });

/** Browsers that an instructor is signed in at. */
export const signInList = strict({
  signIns: z.array(
    strict({
      id: z.string(),
      /** What the browser says that it is. */
      browser: z.string(),
      createdAt: moment,
      expiresAt: moment,
      /** Whether it is the browser that asks. */
      isThis: z.boolean(),
    }),
  ),
});

/** An instructor in an address. */
export const instructorPath = strict({ instructorId: id });

/** A link in an address: its id, never its secret. */
export const linkPath = strict({ linkId: id });

/** A sign-in in an address. */
export const signInPath = strict({ signInId: id });
