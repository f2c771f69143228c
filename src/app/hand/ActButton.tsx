import { Button } from "../parts/controls/Button";
import { focusDial } from "./dial/focusDial";
import { type HandAct, keyName } from "./handActs";

/** The hand that begins anew goes back to the dial, however it came to the button. */
const GOES_BACK: readonly HandAct["place"][] = ["left", "right"];

/** The button of an act, with its key on it. */
export function ActButton({ act }: { readonly act: HandAct }) {
  const key = keyName(act);
  return (
    <Button
      className={act.place === "below" ? "primary" : `hand-act-${act.place}`}
      aria-keyshortcuts={key}
      title={act.hint}
      disabled={act.isClosed}
      onClick={(event) => {
        act.act();
        // A pointer leaves the keys to the dial; whoever came here by keyboard stays.
        if (event.detail > 0 || GOES_BACK.includes(act.place)) focusDial();
      }}
    >
      {act.label} <kbd>{key.length > 1 ? key.toLowerCase() : key}</kbd>
    </Button>
  );
}
