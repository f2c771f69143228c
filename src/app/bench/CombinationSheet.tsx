import { type FormEvent, useState } from "react";
import { ordinalWord } from "../../dialing/words";
import { explain } from "../../drill/combinationRules";
import { type Combination, parseCombination } from "../../lock/combination";
import { faceNumber } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import { Sheet } from "../shell/Sheet";
import type { BenchSetup, CombinationSource } from "./benchSetup";

const SOURCES: readonly { readonly source: CombinationSource; readonly label: string }[] = [
  { source: "as-set", label: "As set: the one this training lock comes with" },
  { source: "drawn", label: "Drawn by the rules for this lock" },
  { source: "own", label: "My own" },
];

/** "combination[0] (100) is …" as one says it: "The first number (100) is …". */
const inPlainWords = (message: string) =>
  `${message.replace(/^combination\[(\d+)\]/, (_, index) => `The ${ordinalWord(Number(index) + 1)} number`)}.`;

/** What the trainee typed, as numbers of the lock or as a sentence that says what is wrong. */
function readOwn(profile: Profile, texts: readonly string[]): { numbers: Combination } | { problem: string } {
  const typed = texts.map((text) => (text.trim() === "" ? Number.NaN : Number(text)));
  const missing = typed.findIndex((number) => !Number.isFinite(number));
  if (missing >= 0) return { problem: `Give the ${ordinalWord(missing + 1)} number.` };
  try {
    const onFace = parseCombination(profile, typed);
    return { numbers: onFace.map((number) => faceNumber(number, profile.graduations, profile.numbersIncrease)) };
  } catch (error) {
    return { problem: error instanceof Error ? inPlainWords(error.message) : String(error) };
  }
}

function RuleNotes({ profile, numbers }: { readonly profile: Profile; readonly numbers: Combination }) {
  const broken = explain(numbers, profile.combinationRules, profile.graduations);
  if (broken.length === 0) return <p className="soft">It keeps every rule for this lock.</p>;
  return (
    <div className="soft">
      <p>Good enough to practice with, but not for a door:</p>
      <ul>
        {broken.map(({ rule, message, source }) => (
          <li key={rule}>
            {message} ({source})
          </li>
        ))}
      </ul>
    </div>
  );
}

interface CombinationSheetProps {
  readonly setup: BenchSetup;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onTake: (source: "as-set" | "drawn") => void;
  readonly onOwn: (numbers: Combination) => void;
}

function CombinationForm({ setup, onClose, onTake, onOwn }: Omit<CombinationSheetProps, "isOpen">) {
  const { profile } = setup;
  const [source, setSource] = useState(setup.source);
  const [texts, setTexts] = useState<readonly string[]>(() =>
    setup.combination.map((number) => String(faceNumber(number, profile.graduations, profile.numbersIncrease))),
  );
  const own = readOwn(profile, texts);
  const isReady = source !== "own" || "numbers" in own;
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (!isReady) return;
    if (source !== "own") onTake(source);
    else if ("numbers" in own) onOwn(own.numbers);
    onClose();
  };
  return (
    <form onSubmit={take}>
      <fieldset>
        <legend className="visually-hidden">Where the combination comes from</legend>
        {SOURCES.map(({ source: one, label }) => (
          <label key={one} className="sheet-choice">
            <input type="radio" name="source" checked={source === one} onChange={() => setSource(one)} />
            {label}
          </label>
        ))}
      </fieldset>
      {source === "own" && (
        <>
          <div className="sheet-row">
            {texts.map((text, k) => (
              <label key={`${ordinalWord(k + 1)}`}>
                <span className="visually-hidden">{ordinalWord(k + 1)} number</span>
                <input
                  className="field"
                  inputMode="decimal"
                  size={4}
                  value={text}
                  onChange={(event) => setTexts(texts.with(k, event.currentTarget.value))}
                />
              </label>
            ))}
          </div>
          {"problem" in own ? (
            <p className="sheet-error" role="alert">
              {own.problem}
            </p>
          ) : (
            <RuleNotes profile={profile} numbers={own.numbers} />
          )}
        </>
      )}
      <div className="sheet-row">
        <button type="submit" className="button primary" disabled={!isReady}>
          Set the lock
        </button>
      </div>
      <p className="soft">
        This is a practice lock. Never type a combination that is in use anywhere, and never try a new one on a real
        door with the door shut.
      </p>
    </form>
  );
}

/** Chooses where the combination comes from. The rules it breaks are told, with their source, but do not stop it. */
export function CombinationSheet(props: CombinationSheetProps) {
  return (
    <Sheet title="Combination" isOpen={props.isOpen} onClose={props.onClose}>
      <CombinationForm {...props} />
    </Sheet>
  );
}
