import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { startKeeping } from "./keeping/keeping";
import { App } from "./shell/App";
import { ErrorBoundary } from "./shell/ErrorBoundary";
import { allowOwnScripts } from "./shell/ownScripts";

allowOwnScripts();

const root = document.getElementById("root");
if (root === null) throw new Error("the page has no element with the id root");
createRoot(root).render(
  <StrictMode>
    <ErrorBoundary place="app">
      <App />
    </ErrorBoundary>
  </StrictMode>,
);
startKeeping();
