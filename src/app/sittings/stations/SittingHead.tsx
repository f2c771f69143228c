import { harmlessName } from "../../../lock/harmlessText";
import { useStored } from "../../parts/page/useStore";
import type { SittingSession } from "../session/sittingSession";

/** Why a sitting may come out the same again, or null where it has a seed of its own. */
function seedWords({ seedFrom }: SittingSession): string | null {
  if (seedFrom === "address") {
    return "Practice only: the address sets the seed, so anyone can repeat this sitting. The record says so.";
  }
  if (seedFrom === "server") return "Your class server drew the seed of this sitting when you began it.";
  return seedFrom === "sheet"
    ? "This sheet sets its seed: every sitting of it has the same numbers and questions."
    : null;
}

interface SittingHeadProps {
  readonly session: SittingSession;
}

/** Who sits; nothing where nobody is named. */
export function Candidate({ session }: SittingHeadProps) {
  const person = useStored(session, (one) => one.person);
  if (person === null) return null;
  return (
    <p className="sitting-person wrap-anywhere phone:truncate">
      <span className="phone:sr-only">Candidate: </span>
      <b>{harmlessName(person)}</b>
    </p>
  );
}

/** Says where a sitting can be repeated. */
export function SeedLine({ session }: SittingHeadProps) {
  const seed = seedWords(session);
  return seed === null ? null : <p className="text-soft wrap-anywhere">{seed}</p>;
}

/** Who sits, and whether the sitting is one that can be repeated. */
export function SittingHead({ session }: SittingHeadProps) {
  return (
    <>
      <Candidate session={session} />
      <SeedLine session={session} />
    </>
  );
}
