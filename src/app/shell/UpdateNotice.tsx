import { useRegisterSW } from "virtual:pwa-register/react";
import { useEffect, useState } from "react";
import { Button } from "../parts/controls/Button";
import { Dialog } from "../parts/controls/Dialog";

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

interface StartProps {
  readonly start: () => void;
  /** What a reload would end, a sentence each. */
  readonly underWay: () => readonly string[];
}

/** Starts the new version; asks first where that would end something, and says what. */
function StartNow({ start, underWay }: StartProps) {
  const [losses, setLosses] = useState<readonly string[]>([]);
  const ask = () => {
    const found = underWay();
    setLosses(found);
    if (found.length === 0) start();
  };
  return (
    <>
      <Button className="primary" onClick={ask}>
        Start it now
      </Button>
      <Dialog
        title="Start the new version now?"
        isOpen={losses.length > 0}
        onClose={() => setLosses([])}
        closeWord="Not now"
      >
        <p>The page reloads for it.</p>
        {losses.map((one) => (
          <p key={one}>{one}</p>
        ))}
        <div className="row mt-4">
          <Button onClick={start}>Reload and start it</Button>
        </div>
      </Dialog>
    </>
  );
}

/** Another tab has started the new version: what is under way here goes on, and the notice still offers it. */
const stay = () => undefined;

/** Says when a new version waits, and that the app now works offline. It never reloads by itself. */
export function UpdateNotice({ underWay }: Pick<StartProps, "underWay">) {
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
    // It has room of its own below the page: scrolled to the end, it covers nothing.
    <div
      className="update plate sticky bottom-5 z-10 row gap-x-4 w-fit max-w-[min(440px,calc(100vw-32px))] mt-4 mr-5 mb-5 ml-auto p-4 border-line text-small raised print:hidden"
      role="status"
      aria-label="Version"
    >
      <p>{isWaiting ? "A new version is ready. It starts when you say so." : "Gatefall now works offline."}</p>
      {isWaiting && <StartNow start={() => startWaiting(updateServiceWorker)} underWay={underWay} />}
      <Button onClick={close}>{isWaiting ? "Later" : "Close"}</Button>
    </div>
  );
}
