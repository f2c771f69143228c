import { PackChange } from "../../../../handover/change/packChange";
import type { ChangeSession } from "./changeSession";
import { feltWords, refusedWords } from "./changeWords";
import { KeyActs, WITH_BUTTON, WITH_KEY } from "./KeyActs";

const SHUT = { act: "shutDoor", label: "Shut the door" } as const;
const AGAIN = { act: "changeAgain", label: "Change it again" } as const;

interface ChangeActsProps {
  readonly session: ChangeSession;
  /** Whether an act in vain is told as the hand feels it, and no advice with it. */
  readonly isOnce: boolean;
}

/** The change key, or the change button, and the door: all there is to do besides dialing. */
export function ChangeActs({ session, isOnce }: ChangeActsProps) {
  const { change, refused } = session;
  const isKeyed = change instanceof PackChange;
  const canChangeAgain = isKeyed && change.proof !== null && !change.isDoorShut;
  const refusal = refused === null ? "" : refusedWords(refused, false);
  return (
    <KeyActs
      change={change}
      legend={isKeyed ? "Change key and door" : "Change button and door"}
      choices={[...(isKeyed ? WITH_KEY : WITH_BUTTON), SHUT, ...(canChangeAgain ? [AGAIN] : [])]}
      said={isOnce ? feltWords(change, refused) : refusal}
      isOnce={isOnce}
      onAct={(act) => session.act(act)}
      onVain={(why) => session.refuse(why)}
    />
  );
}
