/** Sends one command of WebDriver (https://www.w3.org/TR/webdriver2) to a browser. @throws with the browser's own words */
export type Send = (command: Command, asked?: Readonly<Record<string, unknown>>) => Promise<unknown>;

/** What is used of WebDriver: its name in Firefox, its method and its place in WebDriver over HTTP. */
export const COMMANDS = {
  goTo: ["WebDriver:Navigate", "POST", "url"],
  resize: ["WebDriver:SetWindowRect", "POST", "window/rect"],
  run: ["WebDriver:ExecuteScript", "POST", "execute/sync"],
  act: ["WebDriver:PerformActions", "POST", "actions"],
  picture: ["WebDriver:TakeScreenshot", "GET", "screenshot"],
} as const;

export type Command = keyof typeof COMMANDS;

/** A browser that somebody else's program drives. */
export interface RemoteBrowser {
  readonly name: string;
  readonly send: Send;
  readonly close: () => Promise<void>;
}

/** Waits for something that comes by and by. @throws where it does not come in time */
export async function until<T>(what: string, look: () => Promise<T | null>, most_ms = 15_000): Promise<T> {
  const ends = performance.now() + most_ms;
  for (;;) {
    const found = await look();
    if (found !== null) return found;
    if (performance.now() > ends) throw new Error(`not within ${most_ms / 1000} s: ${what}`);
    await new Promise((done) => setTimeout(done, 40));
  }
}
