import type { Told } from "./told";

/** What happened last, and what follows from it, said at once. */
export function ToldLine({ told }: { readonly told: Told | null }) {
  return (
    <div className="run-told" role="status" data-testid="run-told">
      {told === null ? (
        <p className="run-told-say">The lock is fresh, the door is open. What do you do first?</p>
      ) : (
        <>
          <p className="run-told-say">
            {told.isHindered && <span className="run-told-mark">Not so. </span>}
            {told.words}
          </p>
          {told.consequences.map((consequence) => (
            <p key={consequence} className="run-consequence">
              {consequence}
            </p>
          ))}
        </>
      )}
    </div>
  );
}
