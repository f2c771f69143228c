import * as z from "zod/mini";
import { list, number, oneOf, share, shortList, strict, whole } from "../../lock/fieldSchemas";
import { foreign, id, moment } from "../../records/fields";
import { ASSIGNMENT_KINDS, DUE_STATES, MOST_ATTEMPTS } from "../assignments/assignment";
import { MOST_EXTRA_TIME } from "../assignments/extraTime";
import { shownText } from "../names/shownFields";

/** Most people of an assignment, and of a class. */
const MOST_PEOPLE = 1000;

const percent = whole(0, MOST_EXTRA_TIME);

/** What an instructor sets of an assignment, but for its sheet. */
const terms = {
  kind: oneOf(ASSIGNMENT_KINDS),
  from: moment,
  until: moment,
  /** How often each person may begin it; null for as often as one likes. */
  attempts: z.nullable(whole(1, MOST_ATTEMPTS)),
  /** Whom it is for; null for the whole class, those who join later too. */
  people: z.nullable(list(id, 1, MOST_PEOPLE)),
  /** More time than the person has anyway, or less; whoever is not named has the time of the roster. */
  extraTime: shortList(strict({ personId: id, percent }), MOST_PEOPLE),
};

/** A sheet that an instructor sets a class. @remarks the sheet is read by `parseSheet` */
export const newAssignment = strict({ classId: id, sheet: foreign, ...terms });

/** A change of an assignment, made on top of a version. The sheet is left out where it stays; once somebody began, it must. */
export const changedAssignment = strict({ version: whole(1, 1e9), sheet: z.optional(foreign), ...terms });

/** An assignment as an instructor sees it. */
export const assignmentAnswer = strict({
  id: z.string(),
  classId: z.string(),
  title: z.string(),
  /** Fingerprint of what counts in the sheet, short: "7F3A-91C2". */
  fingerprint: z.string(),
  kind: oneOf(ASSIGNMENT_KINDS),
  from: z.number(),
  until: z.number(),
  attempts: z.nullable(z.number()),
  people: z.nullable(z.array(z.string())),
  extraTime: z.array(strict({ personId: z.string(), percent: z.number() })),
  version: z.number(),
  createdAt: z.number(),
  endedAt: z.nullable(z.number()),
  /** How many sittings of it were begun, and how many came in. */
  begun: z.number(),
  received: z.number(),
});

/** An assignment with its sheet. */
export const assignmentWithSheet = z.extend(assignmentAnswer, { sheet: z.unknown() });

/** All assignments of a class, the latest first. */
export const assignmentList = strict({ assignments: z.array(assignmentAnswer) });

/** An assignment in an address. */
export const assignmentPath = strict({ assignmentId: id });

/** A person in an address. */
export const personPath = strict({ personId: id });

/** A sitting in an address. */
export const sittingPath = strict({ sittingId: id });

/** A person's sitting of an assignment, as it is known now. */
export const sittingLine = strict({
  sittingId: z.string(),
  attempt: z.number(),
  begunAt: z.number(),
  receivedAt: z.nullable(z.number()),
  /** By the server's own marks; null where something does not agree, or nothing has come in. */
  outcome: z.nullable(oneOf(["passed", "failed", "not shown yet", "broken-off"])),
  right: z.number(),
  reloads: z.number(),
  isLate: z.boolean(),
  problems: z.number(),
  /** Tries whose turns are in doubt: what turned the dial lost sight of it. Left out where there is none. */
  doubted: z.optional(z.number()),
});

/** What a bench knows of an assignment that one of its people has: never its sheet. */
export const dueAnswer = strict({
  now: z.number(),
  due: z.array(
    strict({
      assignmentId: z.string(),
      title: z.string(),
      kind: oneOf(ASSIGNMENT_KINDS),
      from: z.number(),
      until: z.number(),
      state: oneOf(DUE_STATES),
      /** How often it can still be begun; null for as often as one likes. */
      left: z.nullable(z.number()),
      /** Percent. */
      extraTime: z.number(),
      /** The person's sittings of it, in the order they were begun. */
      sittings: z.array(sittingLine),
    }),
  ),
  /** Comments of instructors that the person has not read yet. */
  unread: z.number(),
});

/** A bench asks to begin a sitting. Its id is made at the bench: asked twice, it is one sitting and one attempt. */
export const askedSitting = strict({ assignmentId: id, sittingId: id });

/** What a sitting is sat by: sheet and seed, which nobody knew before. */
export const givenSitting = strict({
  sittingId: z.string(),
  assignmentId: z.string(),
  kind: oneOf(ASSIGNMENT_KINDS),
  /** As `parseSheet` reads it, with the person's extra time in it. */
  sheet: z.unknown(),
  seed: z.number(),
  seedFrom: oneOf(["sheet", "server"]),
  /** Percent that the times of the sheet are longer by. */
  extraTime: z.number(),
  attempt: z.number(),
  begunAt: z.number(),
  until: z.number(),
});

/** Most tries that are sent at once, and most letters of one packed motion (base64). */
export const TRY_LIMITS = { tries: 20, motion: 2_000_000, bytes: 4 * 2 ** 20 } as const;

/** Which tries of a sitting the server has: they need not be sent again. */
export const triesReceipt = strict({ has: z.array(z.number()) });

const finding = strict({
  code: z.string(),
  path: z.array(z.union([z.string(), z.number()])),
  values: z.record(z.string(), z.unknown()),
});

/** How a sitting stands at the server. */
export const sittingState = z.extend(sittingLine, {
  /** Tries that came before the record. */
  tries: z.number(),
  findings: strict({ problems: z.array(finding), remarks: z.array(finding) }),
});

/** Motions of a sitting's tries that came as they ended, each as a record packs it, by its place from 0. */
export const sittingMotions = strict({ motions: z.array(strict({ index: z.number(), motion: z.string() })) });

/** What an instructor says of a sitting. */
export const newComment = strict({ text: shownText(2000) });

const comment = strict({
  id: z.string(),
  sittingId: z.string(),
  /** Title of the sheet. */
  title: z.string(),
  text: z.string(),
  by: z.string(),
  at: z.number(),
  readAt: z.nullable(z.number()),
});

/** Comments, the latest first. */
export const commentList = strict({ comments: z.array(comment) });

/** Sheets by people: each person of a class with each assignment that is for them. */
export const classResults = strict({
  assignments: z.array(assignmentAnswer),
  people: z.array(
    strict({
      personId: z.string(),
      name: z.string(),
      results: z.array(
        strict({
          assignmentId: z.string(),
          best: z.nullable(sittingLine),
          latest: z.nullable(sittingLine),
          /** The person's other sittings of it, in the order they were begun. */
          others: z.array(sittingLine),
          begun: z.number(),
          received: z.number(),
          reloads: z.number(),
        }),
      ),
    }),
  ),
});

const interval = z.nullable(strict({ low: number, high: number }));

const itemFigures = strict({
  item: z.string(),
  people: z.number(),
  share: share(0, 1),
  interval,
  discrimination: z.nullable(z.number()),
  discriminationInterval: interval,
});

/** How hard each question and each station of an assignment proved: the first sitting of each person that agrees. */
export const difficultyAnswer = strict({
  people: z.number(),
  questions: z.array(itemFigures),
  stations: z.array(itemFigures),
});
