import { type FormEvent, type ReactNode, useState } from "react";
import { Button } from "../parts/controls/Button";
import { Notice } from "../parts/Notice";
import { messageOf } from "../parts/page/messageOf";
import { storedText, storeText } from "../parts/storage/pageStore";
import type { Joining } from "./schoolBench";

/** As it comes onto the page. */
const takesFocus = (element: HTMLElement | null): void => element?.focus();

const BENCH_KEY = "gatefall.bench-name";
const LONGEST = 100;

const PHONE = "(pointer: coarse)";
const usualName = () => (matchMedia(PHONE).matches ? "Phone or tablet" : "Computer");

interface FieldProps {
  readonly label: string;
  readonly hint: ReactNode;
  readonly value: string;
  readonly onText: (text: string) => void;
  readonly isFirst?: boolean;
  readonly isDigits?: boolean;
  readonly isCode?: boolean;
  readonly isNeeded?: boolean;
}

function Field({ label, hint, value, onText, isFirst, isDigits, isCode, isNeeded }: FieldProps) {
  return (
    <label className="block">
      {label} <small>{hint}</small>
      <input
        ref={isFirst === true ? takesFocus : undefined}
        className="field block w-full mt-2"
        value={value}
        required={isNeeded}
        maxLength={LONGEST}
        autoComplete="off"
        autoCapitalize={isCode === true ? "characters" : "words"}
        spellCheck={false}
        inputMode={isDigits === true ? "numeric" : "text"}
        onChange={({ currentTarget }) => onText(currentTarget.value)}
      />
    </label>
  );
}

interface JoinFormProps {
  /** Secret of a card; null where one joins by code. */
  readonly token: string | null;
  readonly onJoin: (asked: Joining, bench: string) => Promise<void>;
  readonly onByCode: () => void;
}

/** Asks how a person joins: class code and name, or the PIN of a card alone, where it has one. */
export function JoinForm({ token, onJoin, onByCode }: JoinFormProps) {
  const [code, setCode] = useState("");
  const [name, setName] = useState("");
  const [pin, setPin] = useState("");
  const [bench, setBench] = useState(() => storedText(BENCH_KEY) ?? usualName());
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (isAsking) return;
    setIsAsking(true);
    setProblem(null);
    const own = bench.trim() === "" ? usualName() : bench.trim();
    storeText(BENCH_KEY, own);
    const typedPin = pin.trim();
    const asked: Joining =
      token === null
        ? { kind: "code", code: code.trim(), name: name.trim(), pin: typedPin }
        : { kind: "card", token, pin: typedPin };
    try {
      await onJoin(asked, own);
    } catch (error) {
      setProblem(messageOf(error));
      setIsAsking(false);
    }
  };
  return (
    <form className="grid gap-4" onSubmit={submit}>
      {token === null ? (
        <>
          <p>Your instructor shows the class code. Your records then go to the class by themselves.</p>
          <Field label="Class code" hint="eight letters" value={code} onText={setCode} isFirst isCode isNeeded />
          <Field label="Your name" hint="as it is on the class list" value={name} onText={setName} isNeeded />
        </>
      ) : (
        <p>Your card has your name and class. Your records then go to the class by themselves.</p>
      )}
      <Field label="PIN" hint="only if you set one, 4 to 12 digits" value={pin} onText={setPin} isDigits />
      <Field label="This bench" hint="how your instructor tells benches apart" value={bench} onText={setBench} />
      {problem !== null && <Notice className="">{problem}</Notice>}
      <div className="row gap-x-4">
        <button type="submit" className="button primary" ref={token === null ? undefined : takesFocus}>
          {isAsking ? "Joining…" : "Join the class"}
        </button>
        {token !== null && <Button onClick={onByCode}>Join with a code instead</Button>}
      </div>
    </form>
  );
}
