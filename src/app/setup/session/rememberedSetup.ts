import { readSetup, type SetupRecord } from "../../../realdial/setup/setupRecord";
import type { SourceKind } from "../../../realdial/sources/sourceKinds";
import { recallText, rememberText } from "../../hand/sources/devices/deviceMemory";

const keyOf = (kind: SourceKind, which = "") => `dial-setup-${kind}${which}`;

/** What the last setup of a device found; null where there was none. @param which - of several of its kind; left out, the last */
export const rememberedSetup = (kind: SourceKind, which?: string): SetupRecord | null =>
  readSetup(recallText(keyOf(kind, which)));

/** Remembers what a setup found, for that one device and as the last of its kind. */
export function rememberSetup(kind: SourceKind, which: string | undefined, record: SetupRecord): void {
  const text = JSON.stringify(record);
  rememberText(keyOf(kind), text);
  if (which !== undefined) rememberText(keyOf(kind, which), text);
}
