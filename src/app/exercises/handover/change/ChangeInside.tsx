import { PackChange } from "../../../../handover/change/packChange";
import { Cutaway } from "../../../pictures/cutaway/Cutaway";
import { PackInside } from "../../../pictures/cutaway/PackInside";
import { packLock } from "./changeCutaway";
import type { ChangeSession } from "./changeSession";
import "../../../pictures/cutaway/cutaway.css";

/** The inside of a lock while its combination is changed. */
export function ChangeInside({ session }: { readonly session: ChangeSession }) {
  const { change, version } = session;
  if (!(change instanceof PackChange)) return <Cutaway attempt={change.attempt} version={version} />;
  const { lock, changeKey } = packLock(change);
  return <PackInside attempt={lock} version={version} changeKey={changeKey} />;
}
