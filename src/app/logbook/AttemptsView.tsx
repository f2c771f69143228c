import { useRef, useState } from "react";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { AttemptRecord } from "../../logbook/attemptRecord";
import { AttemptList } from "./AttemptList";
import { shortTitle } from "./attemptRows";
import type { CurrentLogbook } from "./currentLogbook";
import { ONE_COLUMN } from "./oneColumn";
import { ReplayPane } from "./ReplayPane";
import { usePages } from "./usePages";
import { ZeroingList } from "./ZeroingList";

interface FilterBarProps {
  readonly profileId: string;
  readonly onProfile: (id: string) => void;
  readonly onlyMisses: boolean;
  readonly onOnlyMisses: (onlyMisses: boolean) => void;
}

function FilterBar({ profileId, onProfile, onlyMisses, onOnlyMisses }: FilterBarProps) {
  return (
    <div className="logbook-filter">
      <select
        className="field"
        aria-label="Lock"
        value={profileId}
        onChange={(event) => onProfile(event.currentTarget.value)}
      >
        <option value="">every lock</option>
        {SHIPPED_PROFILES.map((profile) => (
          <option key={profile.id} value={profile.id}>
            {shortTitle(profile, profile.id)}
          </option>
        ))}
      </select>
      <label className="sheet-choice">
        <input type="checkbox" checked={onlyMisses} onChange={(event) => onOnlyMisses(event.currentTarget.checked)} />
        misses only
      </label>
    </div>
  );
}

function Pager({ pages }: { readonly pages: ReturnType<typeof usePages> }) {
  const { count, from, to, later, earlier } = pages;
  return (
    <nav className="logbook-pager" aria-label="Pages of attempts">
      <p role="status">{count === 0 ? "No attempts." : `${from} to ${to} of ${count} attempts, latest first`}</p>
      <button type="button" className="button" disabled={later === null} onClick={() => later?.()}>
        Later
      </button>
      <button type="button" className="button" disabled={earlier === null} onClick={() => earlier?.()}>
        Earlier
      </button>
    </nav>
  );
}

/** The attempts and zeroings of one person, and any of the attempts again. */
export function AttemptsView({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const [profileId, setProfileId] = useState("");
  const [onlyMisses, setOnlyMisses] = useState(false);
  const [chosen, setChosen] = useState<AttemptRecord | null>(null);
  const pane = useRef<HTMLElement>(null);
  const choose = (attempt: AttemptRecord) => {
    setChosen(attempt);
    // Where the replay lies below the list, it comes into view.
    if (matchMedia(ONE_COLUMN).matches) pane.current?.scrollIntoView({ block: "start" });
  };
  const pages = usePages(current, { personId, profileId: profileId === "" ? undefined : profileId, onlyMisses });
  const { attempts, problem } = pages;
  return (
    <div className="logbook-attempts">
      <section aria-label="Attempts">
        <FilterBar {...{ profileId, onlyMisses }} onProfile={setProfileId} onOnlyMisses={setOnlyMisses} />
        {problem !== null && <p role="alert">{problem}</p>}
        {attempts !== null && attempts.length > 0 && (
          <AttemptList attempts={attempts} running={pages.running} chosenId={chosen?.id ?? null} onChoose={choose} />
        )}
        <Pager pages={pages} />
        <ZeroingList current={current} personId={personId} />
      </section>
      <section ref={pane} className="logbook-replay" aria-label="Replay">
        <ReplayPane
          logbook={current.logbook}
          attempt={chosen?.personId === personId ? chosen : null}
          onChanged={setChosen}
        />
      </section>
    </div>
  );
}
