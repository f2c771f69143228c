import type { Danger } from "./session/danger";
import type { Told } from "./told";

interface ToldLineProps {
  readonly told: Told | null;
  /** What is wrong at the door and is not told by what happened last. */
  readonly danger: Danger | null;
  /** Whether what follows from it is left to the end of the sitting. */
  readonly isOnce: boolean;
}

/** What happened last and what follows from it, said at once; and a danger for as long as it lasts. */
export function ToldLine({ told, danger, isOnce }: ToldLineProps) {
  return (
    <div className="run-told" role="status" data-testid="run-told">
      {told === null ? (
        <p className="run-told-say">The lock is new and the door is open. What do you do first?</p>
      ) : (
        <>
          <p className="run-told-say">
            {told.isHindered && <span className="run-told-mark">Not possible. </span>}
            {told.words}
          </p>
          {!isOnce &&
            told.consequences.map((consequence) => (
              <p key={consequence} className="run-consequence">
                {consequence}
              </p>
            ))}
          {!isOnce && danger !== null && <p className="run-consequence">{danger.standing}</p>}
        </>
      )}
    </div>
  );
}
