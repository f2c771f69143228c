import { StrictMode, startTransition } from "react";
import { createRoot } from "react-dom/client";
import { watchLeaving } from "./keeping/keeping";
import { App } from "./shell/App";
import { pageOf, parseRoute } from "./shell/address";
import { ErrorBoundary } from "./shell/ErrorBoundary";
import { FocusKept, watchFocus } from "./shell/FocusKept";
import { allowOwnScripts } from "./shell/ownScripts";
import { SCREENS } from "./shell/screens";

allowOwnScripts();
watchLeaving();

const root = document.getElementById("root");
if (root === null) throw new Error("the page has no element with the id root");
watchFocus(root);

/** Draws the app in place of what the page itself shows: in small pieces, between which the page hears its reader, and shown at once. */
const draw = () =>
  startTransition(() =>
    createRoot(root).render(
      <StrictMode>
        <ErrorBoundary place="app">
          <FocusKept root={root}>
            <App />
          </FocusKept>
        </ErrorBoundary>
      </StrictMode>,
    ),
  );

const hasPainted = () => performance.getEntriesByName("first-contentful-paint").length > 0;

/** Until the picture in the page is on the screen: what comes after it may take its time. A page that is hidden paints nothing. */
async function painted(): Promise<void> {
  if (hasPainted() || document.visibilityState === "hidden") return;
  await new Promise(requestAnimationFrame);
  await new Promise((resume) => setTimeout(resume));
}

// The whole first screen comes at once. A screen that cannot be fetched says so itself.
const screen = SCREENS[pageOf(parseRoute(location.hash))].fetchAhead();
Promise.all([screen, painted()]).then(draw, draw);
