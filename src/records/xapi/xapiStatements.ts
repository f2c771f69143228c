import type { LogbookContents } from "../logbookContents";
import { sittingOf } from "../tryOfSitting";
import { answersParts, type StatedSitting, sittingParts, statedSitting } from "./sittingStatements";
import { actorOf, registrationOf, statementId, timestamp, type XapiStatement } from "./statement";
import { attemptParts, declarationParts, jobParts, type OwnParts, zeroingParts } from "./tryStatements";

/** What each record is stated as; one try of a sitting after the other, then the sittings and their answers. */
function partsOf({ records }: LogbookContents, sittings: readonly StatedSitting[]): OwnParts[] {
  const { attempts, zeroings, jobs, declarations } = records;
  return [
    ...attempts.map((one) => {
      // Once it has come to its end it is stated anew: no statement is ever changed.
      const kind = one.isUnfinished === true ? "unfinished" : "attempt";
      return { id: statementId(kind, one.id), ...attemptParts(one) };
    }),
    ...zeroings.map((one) => ({
      id: statementId(one.outcome === "broken-off" ? "zeroing broken off" : "zeroing", one.id),
      ...zeroingParts(one, sittingOf(one)),
    })),
    ...jobs.map((one) => ({ id: statementId("job", one.id), ...jobParts(one) })),
    ...sittings.flatMap((one) => [sittingParts(one), ...answersParts(one)]),
    ...declarations.map((one) => ({ id: statementId("declaration", one.id), ...declarationParts(one) })),
  ];
}

/** What a try or an answer is part of. */
function contextOf(parts: OwnParts, sittings: ReadonlyMap<string, StatedSitting>): XapiStatement["context"] {
  const common = { platform: "Gatefall", language: "en-US" };
  const { sittingId } = parts;
  if (sittingId === undefined) return common;
  const stated = sittings.get(sittingId);
  const hasParent = stated !== undefined && stated.sheet.id !== parts.object.id;
  return {
    registration: registrationOf(sittingId),
    ...(hasParent && { contextActivities: { parent: [stated.sheet] } }),
    ...common,
  };
}

/**
 * A logbook as statements of xAPI (IEEE 9274.1.1), oldest first.
 *
 * ADL's verbs: attempted (an attempt or a job; opened or right is its success), answered (a question), passed, failed,
 * completed (a finished sitting whose verdict is not shown yet), terminated (broken off), mastered (a skill shown). Our
 * own: zeroed. A sitting, its tries and its answers share a registration, and the sheet is the parent of the latter.
 * Every statement has an id that is made of its record, so that a second upload duplicates nothing.
 *
 * @param appVersion - the version that checks the records of sittings
 * @param stated - the sittings of this logbook whose records check; they are checked here where this is left out
 */
export function xapiStatements(
  contents: LogbookContents,
  appVersion: string,
  stated: readonly StatedSitting[] = contents.records.sittings.flatMap((one) => statedSitting(one, appVersion) ?? []),
): XapiStatement[] {
  const { people } = contents.records;
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const byId = new Map(stated.map((one) => [one.sitting.id, one]));
  const statements = partsOf(contents, stated).map(
    (parts): XapiStatement => ({
      id: parts.id,
      actor: actorOf(parts.personId, names),
      verb: parts.verb,
      object: parts.object,
      result: parts.result,
      context: contextOf(parts, byId),
      timestamp: timestamp(parts.at),
    }),
  );
  return statements.sort((a, b) => a.timestamp.localeCompare(b.timestamp) || a.id.localeCompare(b.id));
}
