import { type FormEvent, useId, useState } from "react";
import { faceText } from "../../../../dialing/words";
import { kindsFor } from "../../../../handover/trouble/drawTrouble";
import type { LockCard, Trouble, TroubleKind } from "../../../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../../../handover/trouble/troubleGuide";
import { Button } from "../../../parts/controls/Button";
import { NumberField } from "../../../parts/controls/NumberField";
import { Select } from "../../../parts/controls/Select";
import { type DraftProblem, EMPTY_DRAFT, type NameDraft, readDraft } from "./nameDraft";

/** The choices of a part: a wheel by its number, or the side a zero was set from. */
function partChoices(kind: TroubleKind, { profile, combination }: LockCard) {
  const { part } = TROUBLE_GUIDE[kind];
  if (part === "wheel") {
    return combination.map((number, k) => [`${k + 1}`, `wheel ${k + 1} (${faceText(number, profile)})`] as const);
  }
  return part === "side"
    ? (["left", "right"] as const).map((side) => [side, `set turning ${side} only`] as const)
    : (["top", "right", "bottom", "left"] as const).map((side) => [side, `toward the ${side}`] as const);
}

const PART_LABELS = { wheel: "Which wheel", side: "Which side", direction: "Toward where" } as const;

const WAYS = [
  ["", "which way"],
  ["left", "left, plus"],
  ["right", "right, minus"],
] as const;

/** Names of the fields in the form; of the size, its id. */
const NAMES: Readonly<Record<keyof NameDraft, string>> = {
  kind: "trouble-kind",
  part: "trouble-part",
  size: "trouble-size",
  way: "trouble-way",
};

/** What tells of a field that something is wanted there. */
type Wanted = (field: keyof NameDraft) => { readonly "aria-invalid"?: true; readonly "aria-describedby"?: string };

/** Leads the hand to a field of a form: of a choice to the first. */
function focusField(form: HTMLFormElement, field: keyof NameDraft): void {
  form.querySelector<HTMLElement>(`[name="${NAMES[field]}"], #${NAMES[field]}`)?.focus();
}

interface SizeFieldsProps {
  readonly card: LockCard;
  readonly kind: TroubleKind;
  readonly draft: NameDraft;
  readonly onDraft: (draft: NameDraft) => void;
  readonly wanted: Wanted;
}

function SizeFields({ card, kind, draft, onDraft, wanted }: SizeFieldsProps) {
  const { part, sizeLabel, unit, tolerance, hasWay } = TROUBLE_GUIDE[kind];
  return (
    <div className="row gap-x-4 mt-1 mb-3 ml-6 pl-4 border-l-4 border-l-hair">
      {part !== null && (
        <label className="inline-flex items-center gap-3">
          <span>{PART_LABELS[part]}</span>
          <Select
            name={NAMES.part}
            {...wanted("part")}
            value={draft.part}
            choices={[["", "choose"], ...partChoices(kind, card)]}
            onChoice={(part) => onDraft({ ...draft, part })}
          />
        </label>
      )}
      <NumberField
        label={sizeLabel}
        id={NAMES.size}
        size={6}
        isInvalid={wanted("size")["aria-invalid"] === true}
        describedBy={wanted("size")["aria-describedby"]}
        value={draft.size}
        onNumber={(size) => onDraft({ ...draft, size })}
      >
        {unit}
      </NumberField>
      {hasWay && (
        <Select
          aria-label="Which way"
          name={NAMES.way}
          {...wanted("way")}
          value={draft.way}
          choices={WAYS}
          onChoice={(way) => onDraft({ ...draft, way })}
        />
      )}
      <small>
        within {tolerance} {unit} counts
      </small>
    </div>
  );
}

/** What is wanted, beside where it is wanted. */
function Problem({ id, problem }: { readonly id: string; readonly problem: DraftProblem | null }) {
  return (
    <span id={id} className="notice block w-fit mb-4 ml-6 empty:hidden" role="alert">
      {problem?.says}
    </span>
  );
}

interface NameFormProps {
  readonly card: LockCard;
  readonly onName: (named: Trouble) => void;
}

/** Name the condition and its size. */
export function NameForm({ card, onName }: NameFormProps) {
  const [draft, setDraft] = useState<NameDraft>(EMPTY_DRAFT);
  const [problem, setProblem] = useState<DraftProblem | null>(null);
  const problemId = useId();
  const change = (next: NameDraft) => {
    setDraft(next);
    setProblem(null);
  };
  const wanted: Wanted = (field) =>
    problem?.field === field ? { "aria-invalid": true, "aria-describedby": problemId } : {};
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const named = readDraft(draft);
    if (!("says" in named)) return onName(named);
    setProblem(named);
    focusField(event.currentTarget, named.field);
  };
  return (
    <form className="panel" aria-label="Name it" onSubmit={submit}>
      <h2>
        Name it <small>which defect, and how large</small>
      </h2>
      <fieldset className="plain">
        <legend className="visually-hidden">Defect</legend>
        {kindsFor(card.profile).map((kind) => (
          <div key={kind}>
            <label className="grid grid-cols-[24px_1fr] items-start py-2 cursor-pointer">
              <input
                type="radio"
                name={NAMES.kind}
                checked={draft.kind === kind}
                onChange={() => change({ ...EMPTY_DRAFT, kind, size: draft.size })}
              />
              <span>
                <b className="font-semibold">{TROUBLE_GUIDE[kind].title}</b>{" "}
                <small className="block">{TROUBLE_GUIDE[kind].line}</small>
              </span>
            </label>
            {draft.kind === kind && (
              <>
                <SizeFields {...{ card, kind, draft, wanted }} onDraft={change} />
                <Problem id={problemId} problem={problem} />
              </>
            )}
          </div>
        ))}
      </fieldset>
      <p className="row mt-3">
        <Button type="submit" className="primary">
          Name it
        </Button>
        {draft.kind === null && <Problem id={problemId} problem={problem} />}
      </p>
    </form>
  );
}
