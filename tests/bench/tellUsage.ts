/** Where a measured program says at its end what it has used. */
export const USAGE_FD = 3;

/** Loaded into a program (`--import`): makes it say so, as `process.resourceUsage()` in JSON. */
export const TELL_USAGE = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from "node:fs"; process.on("exit", () => writeSync(${USAGE_FD}, JSON.stringify(process.resourceUsage())));`,
)}`;
