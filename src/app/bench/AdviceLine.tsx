import type { Advice } from "../../dialing/advice";

/** One sentence to act on and one of detail, above the dial. It keeps its height when it has nothing to say. */
export function AdviceLine({ advice, note }: { readonly advice: Advice | null; readonly note: string | null }) {
  const say = note ?? advice?.say ?? "";
  return (
    <div className="advice">
      <p className="advice-say">{say}</p>
      <p className="advice-detail">{note === null ? (advice?.detail ?? "") : ""}</p>
    </div>
  );
}
