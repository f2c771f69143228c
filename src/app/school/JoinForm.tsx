import { isLikeCardCode } from "../../school/people/classCode";
import { Button } from "../parts/controls/Button";
import { type EntryField, EntryForm } from "../parts/entry/EntryForm";
import { storedText, storeText } from "../parts/storage/pageStore";
import type { Joining } from "./schoolBench";

const BENCH_KEY = "gatefall.bench-name";
const LONGEST = 100;

const PHONE = "(pointer: coarse)";
const usualName = () => (matchMedia(PHONE).matches ? "Phone or tablet" : "Computer");

const CODE: EntryField = {
  name: "code",
  label: "Class code or card code",
  hint: "8 letters from your instructor, or the 16 on your own card",
  capitals: "characters",
};
const NAME: EntryField = {
  name: "name",
  label: "Your name",
  hint: "as it is on the class list; not needed with a card code",
  capitals: "words",
  isOptional: ({ code = "" }) => isLikeCardCode(code),
};
const PIN: EntryField = {
  name: "pin",
  label: "PIN",
  hint: "if you want one: 4 to 12 digits, the same each time you join",
  isDigits: true,
  isOptional: true,
};

/** What this bench is called, which is remembered on it. */
const benchField = (): EntryField => ({
  name: "bench",
  label: "This bench",
  hint: "how your instructor tells benches apart",
  value: storedText(BENCH_KEY) ?? usualName(),
  capitals: "words",
  isOptional: true,
});

interface JoinFormProps {
  /** Secret of a card; null where one joins by code. */
  readonly token: string | null;
  readonly onJoin: (asked: Joining, bench: string) => Promise<void>;
  readonly onByCode: () => void;
}

/** How somebody joins who typed a code: a card has one of its own, which is longer. */
const byTyped = (code: string, name: string, pin: string): Joining =>
  isLikeCardCode(code) ? { kind: "card-code", code, pin } : { kind: "code", code, name, pin };

/** Asks how a person joins: class code and name, or the code of a card, or the PIN of a card alone, where it has one. */
export function JoinForm({ token, onJoin, onByCode }: JoinFormProps) {
  const join = ({ code = "", name = "", pin = "", bench = "" }: Readonly<Record<string, string>>) => {
    const own = bench.trim() === "" ? usualName() : bench.trim();
    storeText(BENCH_KEY, own);
    const typedPin = pin.trim();
    return onJoin(
      token === null ? byTyped(code.trim(), name.trim(), typedPin) : { kind: "card", token, pin: typedPin },
      own,
    );
  };
  return (
    <EntryForm<string>
      fields={[...(token === null ? [CODE, NAME] : []), PIN, benchField()]}
      button="Join the class"
      busy="Joining…"
      focusesButton={token !== null}
      longest={LONGEST}
      onEnter={join}
      intro={
        <p>
          {token === null
            ? "Your instructor shows the class code. If you have a join card, its own code is on it."
            : "Your card has your name and class."}{" "}
          Your records then go to the class by themselves.
        </p>
      }
    >
      {token !== null && <Button onClick={onByCode}>Join with a code instead</Button>}
    </EntryForm>
  );
}
