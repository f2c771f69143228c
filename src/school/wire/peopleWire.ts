import * as z from "zod/mini";
import { matching, must, oneOf, strict, text } from "../../lock/fieldSchemas";
import { id, moment } from "../../records/fields";
import { shownName } from "../names/shownFields";

/** A secret of 32 bytes in a link or on a card, base64url. */
export const token = matching(/^[\w-]{43}$/, must("text", { least: 43, most: 43 }));

/** Name to sign in with. */
const login = text(100, 2);
/** One as it may be chosen: others are shown it. */
export const newLogin = shownName(100, 2);
/** A password as it may be chosen. */
export const newPassword = text(200, 10);

/** The first of a school: makes the school and its head. */
export const firstSignUp = strict({
  token,
  school: shownName(100),
  name: shownName(100),
  login: newLogin,
  password: newPassword,
});

/** Name and password of an instructor. */
export const signIn = strict({ login, password: text(200) });

/** Who is signed in, and what each change from this browser must bring along in the header `x-csrf`. */
export const signedIn = strict({
  school: strict({ id: z.string(), name: z.string() }),
  instructor: strict({ id: z.string(), name: z.string(), role: oneOf(["head", "instructor"]) }),
  csrf: z.string(),
  expiresAt: moment,
});

const shown = strict({ id: z.string(), name: z.string() });

/** A code of a class or a card as it is typed: letters and digits, in either case, with or without spaces and hyphens. */
const typedCode = text(40);

/** Four to twelve digits that a person may guard a name with. */
const pin = matching(/^\d{4,12}$/, must("digits", { least: 4, most: 12 }));

/** A bench joins a class by its code, under a name. */
export const joinByCode = strict({
  code: typedCode,
  name: shownName(100),
  pin: z.optional(pin),
  bench: shownName(100),
});

/** A bench joins by the card of a person. */
export const joinByCard = strict({ token, pin: z.optional(pin), bench: shownName(100) });

/** A bench joins by the code that is printed on the card of a person. */
export const joinByCardCode = strict({ code: typedCode, pin: z.optional(pin), bench: shownName(100) });

/** What a bench knows of its class. */
export const joined = strict({
  school: shown,
  class: shown,
  /** Who joined. */
  person: shown,
  /** Everybody who joined at this bench and did not leave it. */
  people: z.optional(
    z.array(
      strict({
        id: z.string(),
        name: z.string(),
        /** When a card of theirs stopped being good since they joined here; left out where none did. */
        cardLostAt: z.optional(moment),
      }),
    ),
  ),
  /** When the class ended; null or left out while it goes on. */
  classEndedAt: z.optional(z.nullable(moment)),
  /** The bench, by the id that its records are known under. */
  deviceId: z.string(),
  /** The server's clock, so that a bench knows how far its own is off. */
  now: moment,
});

/** Who leaves a bench: one person, or everybody, where nobody is named. */
export const leaving = strict({ personId: z.optional(id) });
