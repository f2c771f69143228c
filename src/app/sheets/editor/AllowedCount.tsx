import { useEffect, useState } from "react";
import type { CombinationRules, Profile } from "../../../lock/profile";
import { countBeside } from "./combinationCounter";
import type { CountMessage } from "./countMessages";

/** Typing goes on for a moment before it is worth counting. */
const PAUSE_MS = 250;

const words = (message: CountMessage | null): string | null => {
  switch (message?.kind) {
    case undefined:
      return "Counting the combinations…";
    case "counted":
      return `The rules leave ${message.count.toLocaleString("en-US")} combinations.`;
    case "not-counted":
      return message.says;
    case "no-sense":
      return null;
  }
};

interface AllowedCountProps {
  readonly profile: Profile;
  readonly rules: CombinationRules;
}

/** How many combinations the rules leave; nothing while they make no sense. */
export function AllowedCount({ profile, rules }: AllowedCountProps) {
  const [message, setMessage] = useState<CountMessage | null>(null);
  const task = JSON.stringify([profile, rules]);
  useEffect(() => {
    const [lock, asked] = JSON.parse(task) as [Profile, CombinationRules];
    setMessage(null);
    let end = () => {};
    const timer = setTimeout(() => {
      end = countBeside(lock, asked, setMessage);
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      end();
    };
  }, [task]);
  const says = words(message);
  return says === null ? null : <p className="col-span-full my-3 text-small text-soft print:hidden">{says}</p>;
}
