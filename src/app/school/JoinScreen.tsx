import { useState } from "react";
import type { PersonRecord } from "../../records/records";
import type { JoiningRow } from "../../store/marks/outboxMarks";
import { Joined } from "./Joined";
import { JoinForm } from "./JoinForm";
import { type Joining, schoolBench } from "./schoolBench";
import { useSchoolBench } from "./useSchoolBench";

/** Who joined, and the local people whose records may be theirs. */
interface Done {
  readonly joining: JoiningRow;
  readonly locals: readonly PersonRecord[];
  /** Whoever practiced here before. */
  readonly before: PersonRecord | null;
}

/** Takes a card out of the address: it is as good as a key, and stays neither in view nor in the history. */
function forgetCard(): void {
  history.replaceState(history.state, "", "#/join");
}

interface JoinProps {
  /** Of a person, from the address of a QR code. */
  readonly card: string | null;
}

/** The page where a bench joins a class: begun anew with each card, though the one before it was just taken. */
export const JoinScreen = ({ card }: JoinProps) => <Join key={card} card={card} />;

function Join({ card }: JoinProps) {
  const bench = useSchoolBench();
  const [token] = useState(card);
  const [isByCard, setIsByCard] = useState(card !== null);
  const [done, setDone] = useState<Done | null>(null);
  const join = async (asked: Joining, name: string) => {
    // A hand may be quicker than the logbook opens.
    const ready = await schoolBench();
    const before = ready.current.person;
    const joining = await ready.join(asked, name);
    forgetCard();
    setDone({ joining, locals: await ready.localPeople(), before });
  };
  return (
    <main className="page gap-6 max-w-[640px] pt-6 focus:outline-none" id="content" tabIndex={-1}>
      <h1>{done === null ? "Join a class" : "You joined the class"}</h1>
      {done !== null && bench !== null ? (
        <Joined bench={bench} {...done} />
      ) : (
        <JoinForm
          key={`${isByCard}`}
          token={isByCard ? token : null}
          onJoin={join}
          onByCode={() => {
            forgetCard();
            setIsByCard(false);
          }}
        />
      )}
    </main>
  );
}
