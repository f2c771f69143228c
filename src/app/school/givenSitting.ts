import type * as z from "zod/mini";
import { givenSitting, sittingState, triesReceipt } from "../../school/wire/assignmentsWire";
import type { SessionHere, SittingHere } from "../keeping/sittingSlot";
import { APP_VERSION } from "../parts/page/appVersion";
import { newId } from "../parts/page/newId";
import { storedText, storeText } from "../parts/storage/pageStore";
import { type Answer, askServer, jsonBody } from "./askServer";
import { TrySender } from "./trySender";

const ASKED = "gatefall.begin.";

/** Who begins a sitting: somebody of the class. */
interface WhoBegins {
  readonly id: string;
  readonly name: string;
}

/** What came of asking to begin. */
export type Begun =
  | { readonly kind: "begun" }
  | { readonly kind: "other-here"; readonly title: string }
  | Exclude<Answer<never>, { kind: "answered" }>;

/** The id that a sitting was asked for under: asked again after a lost answer, it is the same one and no other attempt. */
function idAsked(assignmentId: string, personId: string): string {
  const key = `${ASKED}${assignmentId}.${personId}`;
  const id = storedText(key) ?? newId();
  storeText(key, id);
  return id;
}

const forget = (assignmentId: string, personId: string) => storeText(`${ASKED}${assignmentId}.${personId}`, null);

/** Waits until it is known whether a sitting goes on here. */
async function settled(current: SittingHere): Promise<void> {
  while (!current.isSettled) await new Promise((resolve) => setTimeout(resolve, 50));
}

/** Begins a sitting of an assignment: sheet and seed come from the class server now. */
export async function beginAssigned(
  assignmentId: string,
  { id: personId, name }: WhoBegins,
  current: SittingHere,
): Promise<Begun> {
  await settled(current);
  const { session } = current;
  if (!current.isFree && session !== null && !session.isOver) return { kind: "other-here", title: session.sheet.title };
  const sittingId = idAsked(assignmentId, personId);
  const path = `/bench/people/${encodeURIComponent(personId)}/sittings`;
  const answer = await askServer(path, givenSitting, jsonBody({ assignmentId, sittingId }));
  if (answer.kind !== "answered") return answer;
  const { sheet, seed, seedFrom, extraTime } = answer.value;
  current.putAway();
  current.beginGiven({
    id: sittingId,
    sheet,
    seed,
    seedFrom,
    assignmentId,
    extraTime_percent: extraTime,
    person: name,
    personId,
  });
  forget(assignmentId, personId);
  return { kind: "begun" };
}

const sender = new TrySender({
  post: (sittingId, tries) =>
    askServer(`/bench/sittings/${encodeURIComponent(sittingId)}/tries`, triesReceipt, jsonBody({ tries })),
  now: () => performance.now(),
  chance: Math.random,
  later: (act, wait_ms) => {
    const timer = setTimeout(act, wait_ms);
    return () => clearTimeout(timer);
  },
});

function sendTries(session: SessionHere): void {
  void sender.look({
    id: session.id,
    get results() {
      return session.results;
    },
    motions: () => session.facts(APP_VERSION).motions ?? [],
  });
}

const watched = new WeakSet<SittingHere>();

/** Sends the tries of what is sat here as they end, where a class server gave it. */
export function watchSitting(current: SittingHere): void {
  if (watched.has(current)) return;
  watched.add(current);
  let seen: SessionHere | null = null;
  const look = () => {
    const { session } = current;
    if (session === null || session.assignmentId === null) return;
    if (session !== seen) {
      seen = session;
      session.subscribe(() => sendTries(session));
    }
    sendTries(session);
  };
  current.subscribe(look);
  addEventListener("online", () => void sender.hurry());
  look();
}

/** How a sitting stands at the server. */
export const askedState = (sittingId: string): Promise<Answer<z.output<typeof sittingState>>> =>
  askServer(`/bench/sittings/${encodeURIComponent(sittingId)}`, sittingState);
