import type { Danger } from "./session/danger";
import type { Told } from "./session/told";

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
    <div
      className="run-told plate border-l-4 border-l-accent p-4 phone:py-3 print:hidden"
      role="status"
      data-testid="run-told"
    >
      {told === null ? (
        <p className="text-lead leading-[1.35]">The lock is new and the door is open. What do you do first?</p>
      ) : (
        <>
          <p className="text-lead leading-[1.35]">
            {told.isHindered && <span className="font-semibold">Not possible. </span>}
            {told.words}
          </p>
          {!isOnce &&
            told.consequences.map((consequence) => (
              <p key={consequence} className="pointed mt-2">
                {consequence}
              </p>
            ))}
          {!isOnce && danger !== null && <p className="pointed mt-2">{danger.standing}</p>}
        </>
      )}
    </div>
  );
}
