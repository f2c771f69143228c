/**
 * Keeps the screen awake: nobody touches it while a device is turned.
 *
 * @returns lets it sleep again. A browser that cannot do this, or does not want to, leaves the screen as it is
 */
export function keepAwake(): () => void {
  const { wakeLock } = navigator;
  if (wakeLock === undefined) return () => undefined;
  let held: WakeLockSentinel | null = null;
  const ending = new AbortController();
  const take = async () => {
    if (document.visibilityState !== "visible") return;
    held = await wakeLock.request("screen");
    if (ending.signal.aborted) await held.release();
  };
  const tryToTake = () => void take().catch(() => undefined);
  // The system takes it away from a page that is hidden.
  document.addEventListener("visibilitychange", tryToTake, { signal: ending.signal });
  tryToTake();
  return () => {
    ending.abort();
    held?.release().catch(() => undefined);
  };
}
