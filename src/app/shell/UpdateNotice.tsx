import { useRegisterSW } from "virtual:pwa-register/react";
import { useEffect } from "react";

/** How long it is told that the app now works offline, milliseconds. */
const NEWS_FOR = 8000;

/**
 * Starts the version that waits, and reloads once it is there. On a first visit, which no version serves yet, it does not
 * wait: then a reload is all.
 */
async function startWaiting(update: (reload: boolean) => Promise<void>): Promise<void> {
  const waiting = (await navigator.serviceWorker.getRegistration())?.waiting ?? null;
  if (waiting === null) location.reload();
  waiting?.addEventListener("statechange", () => waiting.state === "activated" && location.reload());
  await update(false);
}

/** Another tab has started the new version: what is under way here goes on, and the notice still offers it. */
const stay = () => undefined;

/** Says when a new version waits, and that the app now works offline. It never reloads by itself. */
export function UpdateNotice() {
  const {
    needRefresh: [isWaiting, setWaiting],
    offlineReady: [isReady, setReady],
    updateServiceWorker,
  } = useRegisterSW({ onNeedReload: stay });
  useEffect(() => {
    if (!isReady) return;
    // Good news need no answer.
    const timer = setTimeout(() => setReady(false), NEWS_FOR);
    return () => clearTimeout(timer);
  }, [isReady, setReady]);
  if (!isWaiting && !isReady) return null;
  const close = () => {
    setWaiting(false);
    setReady(false);
  };
  return (
    <aside className="update" role="status" aria-label="Version">
      <p>{isWaiting ? "A new version is ready. It starts when you say so." : "Gatefall now works offline."}</p>
      {isWaiting && (
        <button type="button" className="button primary" onClick={() => startWaiting(updateServiceWorker)}>
          Start it now
        </button>
      )}
      <button type="button" className="button" onClick={close}>
        {isWaiting ? "Later" : "Good"}
      </button>
    </aside>
  );
}
