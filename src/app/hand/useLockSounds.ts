import { useEffect, useRef } from "react";
import type { Graduations } from "../../lock/dial";
import { useSound } from "../parts/page/useSound";
import type { Bolt } from "./bolt";

/** What a lock under the hand lets one hear. */
interface AudibleLock {
  readonly dial: Graduations;
  readonly bolt: Bolt;
  /** Whether the lever nose is in the cam. */
  readonly isCoupled: boolean;
}

/** Fetched with the first sound that is heard. Where it cannot be fetched, the lock is mute. */
async function playChange(was: AudibleLock, now: AudibleLock): Promise<void> {
  const { dialSound } = await import("./dial/dialSound");
  dialSound.turned(was.dial, now.dial);
  if (now.isCoupled && !was.isCoupled) dialSound.noseDropped();
  if (now.bolt === was.bolt) return;
  if (now.bolt === "back") dialSound.opened();
  if (now.bolt === "thrown") dialSound.thrown();
}

/** Clicks at the graduations, the nose that drops, the bolt: while sounds are on. */
export function useLockSounds({ dial, bolt, isCoupled }: AudibleLock, isMute: boolean): void {
  const isOn = useSound().isOn && !isMute;
  const heard = useRef<AudibleLock | null>(null);
  useEffect(() => {
    const was = heard.current;
    const now = { dial, bolt, isCoupled };
    heard.current = isOn ? now : null;
    if (was !== null && isOn) playChange(was, now).catch(() => undefined);
  }, [dial, bolt, isCoupled, isOn]);
}
