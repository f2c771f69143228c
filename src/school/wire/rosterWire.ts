import * as z from "zod/mini";
import { matching, must, shortList, shortText, strict, whole } from "../../lock/fieldSchemas";
import { id, moment } from "../../records/fields";
import { shownName } from "../names/shownFields";
import { problemAnswer } from "./problemWire";

/** More time in sittings than others have, percent of the sheet's. */
export const extraTime = whole(0, 300);

/** Longest name, characters. */
export const LONGEST_NAME = 100;

/** A person of a class, as an instructor sees them. */
export const rosterPerson = strict({
  id: z.string(),
  name: z.string(),
  extraTime: z.number(),
  hasPin: z.boolean(),
  /** Whether they joined by a code under a name that was not on the roster, and nobody has looked at that yet. */
  isByCode: z.boolean(),
  /** Whether a join card is good for them here. */
  hasCard: z.boolean(),
  /** Which change of the person this is; whoever changes them next says it. */
  version: z.number(),
  joinedAt: moment,
});

/** Everybody in a class. */
export const roster = strict({ people: z.array(rosterPerson) });

/** Everybody of the school, with their classes. */
export const schoolPeople = strict({
  people: z.array(
    strict({
      id: z.string(),
      name: z.string(),
      extraTime: z.number(),
      version: z.number(),
      classIds: z.array(z.string()),
    }),
  ),
});

/** Who stays, where two entries are of one person. */
export const mergeAsked = strict({ into: id });

/** Two entries are one: how many records moved. */
export const mergedReceipt = strict({ records: z.number() });

/** A name for the roster. Somebody of the school who has it already comes into the class; nobody is made twice. */
export const newPerson = strict({
  name: shownName(LONGEST_NAME),
  extraTime: z.optional(extraTime),
  /** Who is meant, where several people of the school have the name. */
  personId: z.optional(id),
});

/** What is changed of a person, on top of a version. */
export const personChange = strict({
  version: whole(1, 1e9),
  name: z.optional(shownName(LONGEST_NAME)),
  extraTime: z.optional(extraTime),
  /** Takes the PIN away from somebody who forgot it; they set another when they join next. */
  noPin: z.optional(z.literal(true, must("flag"))),
  /** Says that a name that came by code belongs on the roster. */
  isKnown: z.optional(z.literal(true, must("flag"))),
});

/** A person in an address. */
export const personPath = strict({ personId: id });

/** A person of a class in an address. */
export const classPersonPath = strict({ classId: id, personId: id });

/** A file of names, as text. */
const csv = shortText(200_000);

/** A file of names that an instructor wants to look at. */
export const rosterFile = strict({ csv });

/** What would become of each row of a file. */
export const rosterPreview = strict({
  rows: z.array(
    z.discriminatedUnion("outcome", [
      strict({ line: z.number(), outcome: z.literal("added"), name: z.string(), extraTime: z.number() }),
      strict({
        line: z.number(),
        outcome: z.literal("matched"),
        name: z.string(),
        personId: z.string(),
        /** Whether they are in the class already. */
        isInClass: z.boolean(),
        /** The extra time that the file sets anew, percent; null where it leaves that as it is. */
        extraTime: z.nullable(z.number()),
      }),
      strict({ line: z.number(), outcome: z.literal("refused"), name: z.string(), why: problemAnswer.shape.problem }),
    ]),
  ),
  /** What was looked at: whoever confirms it says it. */
  seen: z.string(),
});

/** Rows of a preview. */
export type PreviewRow = Readonly<z.infer<typeof rosterPreview>["rows"][number]>;

/** An instructor has looked at the preview, and wants just that. */
export const confirmedRoster = strict({
  csv,
  seen: matching(/^[0-9a-f]{64}$/, must("hash")),
});

/** What a confirmed file came to. */
export const takenRoster = strict({ added: z.number(), matched: z.number(), refused: z.number() });

/** Who gets a new card: these, or everybody of the class who has none. What cards they had are good no more. */
export const newCards = strict({ personIds: z.optional(shortList(id, 500)) });

/** Cards as they are made: the secret and the code of each are shown this once. */
export const madeCards = strict({
  class: strict({ id: z.string(), name: z.string() }),
  cards: z.array(strict({ personId: z.string(), name: z.string(), token: z.string(), code: z.string() })),
});
