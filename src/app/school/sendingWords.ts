import { countText } from "../../wording/amountWords";
import { clockText } from "../parts/moments";
import { problemWords } from "./askServer";
import type { SendingState, Trouble } from "./page/sendingState";

/** What keeps a bench and its class apart, in few words. */
export const WHY: Readonly<Record<Trouble["kind"], string>> = {
  "no-network": "no network",
  "signed-out": "signed out",
  "no-storage": "the storage does not answer",
  server: "the server has trouble",
};

/** The state of the sending, in as few words as tell it. */
export function sendingWords({ waiting, refused, isSending, sentAt, trouble }: SendingState): string {
  const parts = [];
  if (waiting > 0 && trouble !== null) parts.push(`${waiting} waiting, ${WHY[trouble.kind]}`);
  else if (trouble?.kind === "signed-out") parts.push("Signed out of the class");
  else if (trouble?.kind === "no-storage") parts.push("Nothing sent, the storage does not answer");
  else if (waiting > 0) parts.push(isSending ? `Sending ${waiting}` : `${waiting} waiting`);
  if (refused > 0) parts.push(`${refused} refused`);
  if (parts.length > 0) return parts.join(", ");
  return sentAt === null ? "All sent" : `All sent ${clockText(sentAt)}`;
}

/** What a person does about it, in sentences; null where nothing is to be done. */
export function troubleSentence(trouble: Trouble | null): string | null {
  switch (trouble?.kind) {
    case undefined:
      return null;
    case "no-network":
      return "The class server does not answer. Go on practicing: every record stays on this bench and is sent when the network is back.";
    case "signed-out":
      return "Your instructor signed this bench out, or it was signed out at the server. Join the class again to send what waits.";
    case "no-storage":
      return "This browser does not let the bench read or change its records now. Go on as the page says about saving. The bench tries again by itself, and the class takes nothing twice.";
    case "server":
      return `The class server does not take records now: ${problemWords(trouble.problem)}. Every record stays on this bench until then.`;
  }
}

const MINUTE_MS = 60_000;

/** That a clock is wrong, in sentences; null where it is not. */
export function clockSentence(ahead_ms: number): string | null {
  if (ahead_ms === 0) return null;
  const minutes = countText(Math.round(Math.abs(ahead_ms) / MINUTE_MS), "minute");
  const way = ahead_ms > 0 ? "ahead of" : "behind";
  return `The clock of this bench is ${minutes} ${way} the server’s. Set it right: records show the times of this clock.`;
}
