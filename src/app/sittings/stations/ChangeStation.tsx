import { combinationText } from "../../../handover/change/changeFault";
import { ChangeHand } from "../../exercises/handover/change/ChangeHand";
import { ChangeInside } from "../../exercises/handover/change/ChangeInside";
import { useHandStore } from "../../hand/useHandStore";
import { useStore } from "../../parts/page/useStore";
import type { ChangeTry } from "../tries/changeTry";
import "../../exercises/handover/change/change.css";

interface ChangeStationProps {
  readonly one: ChangeTry;
}

/** The dial of a change, its key and its door, with the help that the sheet gives and no way to begin again. */
export function ChangeStationHand({ one }: ChangeStationProps) {
  const session = useHandStore(one.session);
  return <ChangeHand session={session} isOnce />;
}

/** The card with both combinations; with full help also the inside of the lock. */
export function ChangePanels({ one }: ChangeStationProps) {
  const { change, help } = useStore(one.session);
  const { profile, present, wanted } = change;
  return (
    <>
      <section className="panel" aria-label="Card of the lock">
        <h2 className="mb-3">
          Card of the lock <small>{profile.title}</small>
        </h2>
        <p data-testid="change-card">
          Current: {combinationText(present, profile)}. New: {combinationText(wanted, profile)}.
        </p>
        <p className="text-soft">Prove it with the door open. Shutting the door ends the try.</p>
      </section>
      {help === "full" && (
        <div className="panel">
          <ChangeInside session={one.session} />
        </div>
      )}
    </>
  );
}
