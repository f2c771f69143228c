import { type FormEvent, useId, useState } from "react";
import { faceText } from "../../../dialing/words";
import { kindsFor } from "../../../handover/trouble/drawTrouble";
import type { LockCard, Trouble, TroubleKind } from "../../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../../handover/trouble/troubleGuide";
import { EMPTY_DRAFT, type NameDraft, readDraft } from "./nameDraft";

/** The choices of a part: a wheel by its number, or the side a zero was set from. */
function partChoices(kind: TroubleKind, { profile, combination }: LockCard) {
  return TROUBLE_GUIDE[kind].part === "wheel"
    ? combination.map((number, k) => ({ value: String(k + 1), label: `wheel ${k + 1} (${faceText(number, profile)})` }))
    : (["left", "right"] as const).map((side) => ({ value: side, label: `set from the ${side} only` }));
}

interface SizeFieldsProps {
  readonly card: LockCard;
  readonly kind: TroubleKind;
  readonly draft: NameDraft;
  readonly onDraft: (draft: NameDraft) => void;
}

function SizeFields({ card, kind, draft, onDraft }: SizeFieldsProps) {
  const id = useId();
  const { part, sizeLabel, unit, tolerance, hasWay } = TROUBLE_GUIDE[kind];
  return (
    <div className="trouble-size">
      {part !== null && (
        <label>
          <span>{part === "wheel" ? "Which wheel" : "Which side"}</span>
          <select
            className="field"
            value={draft.part}
            onChange={(event) => onDraft({ ...draft, part: event.currentTarget.value })}
          >
            <option value="">choose</option>
            {partChoices(kind, card).map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </label>
      )}
      <label htmlFor={id}>{sizeLabel}</label>
      <span className="trouble-with-unit">
        <input
          id={id}
          className="field"
          inputMode="decimal"
          size={6}
          value={draft.size}
          onChange={(event) => onDraft({ ...draft, size: event.currentTarget.value })}
        />
        {unit}
      </span>
      {hasWay && (
        <select
          className="field"
          aria-label="Which way"
          value={draft.way}
          onChange={(event) => {
            const way = event.currentTarget.value;
            onDraft({ ...draft, way: way === "left" || way === "right" ? way : "" });
          }}
        >
          <option value="">which way</option>
          <option value="left">left, plus</option>
          <option value="right">right, minus</option>
        </select>
      )}
      <small className="trouble-soft">
        within {tolerance} {unit} counts
      </small>
    </div>
  );
}

interface NameFormProps {
  readonly card: LockCard;
  readonly onName: (named: Trouble) => void;
}

/** Name the condition and its size. */
export function NameForm({ card, onName }: NameFormProps) {
  const [draft, setDraft] = useState<NameDraft>(EMPTY_DRAFT);
  const [problem, setProblem] = useState<string | null>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const named = readDraft(draft);
    setProblem(typeof named === "string" ? named : null);
    if (typeof named !== "string") onName(named);
  };
  return (
    <form className="panel trouble-name" aria-label="Name it" onSubmit={submit}>
      <h2>
        Name it <small>what is the matter, and how much</small>
      </h2>
      <fieldset className="trouble-kinds">
        <legend className="visually-hidden">Condition</legend>
        {kindsFor(card.profile).map((kind) => (
          <div key={kind}>
            <label className="trouble-kind">
              <input
                type="radio"
                name="trouble-kind"
                checked={draft.kind === kind}
                onChange={() => setDraft({ ...EMPTY_DRAFT, kind, size: draft.size })}
              />
              <span>
                <b>{TROUBLE_GUIDE[kind].title}</b> <small>{TROUBLE_GUIDE[kind].line}</small>
              </span>
            </label>
            {draft.kind === kind && <SizeFields card={card} kind={kind} draft={draft} onDraft={setDraft} />}
          </div>
        ))}
      </fieldset>
      <p className="trouble-buttons">
        <button type="submit" className="button primary">
          Name it
        </button>
        <span className="trouble-problem" role="alert">
          {problem}
        </span>
      </p>
    </form>
  );
}
