import { writeFile } from "node:fs/promises";
import type { RemoteBrowser } from "./driver";
import { until } from "./driver";

/** Keys without a letter, as WebDriver spells them. */
const KEYS: Readonly<Record<string, string>> = {
  Shift: "\uE008",
  Enter: "\uE007",
  PageUp: "\uE00E",
  PageDown: "\uE00F",
  ArrowLeft: "\uE012",
  ArrowRight: "\uE014",
};

/** A key that goes down or up. */
export interface KeyMove {
  readonly type: "keyDown" | "keyUp";
  readonly key: string;
}

/** A point that a pointer goes to, CSS pixels; or the button that goes down or up there. */
export type PointerMove = { readonly x: number; readonly y: number } | "down" | "up";

/** Finds what a person can see and press, by the name it goes by. Runs in the page. */
const BY_NAME = `
  const nameOf = (one) => (one.getAttribute("aria-label") ?? one.textContent).replace(/\\s+/g, " ").trim();
  const front = document.querySelector("dialog[open], [role=dialog]") ?? document;
  const seen = [...front.querySelectorAll(arguments[0])].filter((one) => one.checkVisibility() && !one.disabled);
  const found = seen.find((one) => nameOf(one) === arguments[1]);`;

/** Waits until a motion of the page itself has come to rest, then gives the middle of what it is about. */
const MIDDLE = `${BY_NAME}
  if (found === undefined) return null;
  found.scrollIntoView({ block: "nearest", behavior: "instant" });
  const { left, top, width, height } = found.getBoundingClientRect();
  return { x: Math.round(left + width / 2), y: Math.round(top + height / 2) };`;

/** A page of the built app in a browser that is driven from outside. */
export class RemotePage {
  private readonly browser: RemoteBrowser;
  private readonly address: string;
  private isOpen = false;

  constructor(browser: RemoteBrowser, address: string) {
    this.browser = browser;
    this.address = address;
  }

  get name(): string {
    return this.browser.name;
  }

  /** Goes to a page of the app. Only the first is loaded: WebKit's driver can wait for good for a load that is none. */
  async open(hash: string): Promise<void> {
    if (this.isOpen) await this.run("location.hash = arguments[0]", hash);
    else await this.browser.send("goTo", { url: `${this.address}${hash}` });
    this.isOpen = true;
  }

  /** Runs a function's body in the page. */
  async run<T>(script: string, ...args: readonly unknown[]): Promise<T> {
    const answer = await this.browser.send("run", { script, args });
    // Firefox wraps what comes back, WebDriver over HTTP has unwrapped it already.
    return (answer !== null && typeof answer === "object" && "value" in answer ? answer.value : answer) as T;
  }

  /** Text of the first of its kind; null where there is none. */
  text(selector: string): Promise<string | null> {
    return this.run("return document.querySelector(arguments[0])?.textContent ?? null", selector);
  }

  attribute(selector: string, name: string): Promise<string | null> {
    const script = "return document.querySelector(arguments[0])?.getAttribute(arguments[1]) ?? null";
    return this.run(script, selector, name);
  }

  /** Waits for a text. @returns it */
  waitFor(selector: string, wanted: RegExp): Promise<string> {
    return until(`${selector} says ${wanted}`, async () => {
      const text = await this.text(selector);
      return text !== null && wanted.test(text) ? text : null;
    });
  }

  async focus(selector: string): Promise<void> {
    await until(selector, () =>
      this.run(
        "return document.querySelector(arguments[0])?.focus() === undefined && document.querySelector(arguments[0]) !== null || null",
        selector,
      ),
    );
  }

  /** Presses a button with the mouse. */
  async press(...names: readonly string[]): Promise<void> {
    for (const name of names) {
      const middle = await until(`a button "${name}"`, () =>
        this.run<{ readonly x: number; readonly y: number } | null>(MIDDLE, "button, [role=button]", name),
      );
      await this.point(middle, "down", "up");
    }
  }

  /** Whether a button can be seen. */
  has(name: string): Promise<boolean> {
    return this.run(`${BY_NAME} return found !== undefined;`, "button, [role=button]", name);
  }

  /** Moves the mouse, or presses and releases it. */
  async point(...moves: readonly PointerMove[]): Promise<void> {
    const actions = moves.map((move) => {
      if (move === "down") return { type: "pointerDown", button: 0 };
      if (move === "up") return { type: "pointerUp", button: 0 };
      return { type: "pointerMove", ...move, duration: 0, origin: "viewport" };
    });
    const parameters = { pointerType: "mouse" };
    await this.browser.send("act", { actions: [{ type: "pointer", id: "mouse", parameters, actions }] });
  }

  /** Moves keys down and up. */
  async keys(moves: readonly KeyMove[]): Promise<void> {
    const actions = moves.map(({ type, key }) => ({ type, value: KEYS[key] ?? key }));
    if (actions.length > 0) await this.browser.send("act", { actions: [{ type: "key", id: "keys", actions }] });
  }

  /** Presses keys one after the other. */
  async type(...keys: readonly string[]): Promise<void> {
    await this.keys(keys.flatMap((key) => [{ type: "keyDown", key } as const, { type: "keyUp", key } as const]));
  }

  /** Saves a picture of what is in the window. */
  async picture(path: string): Promise<void> {
    const taken = await this.browser.send("picture", {});
    const { value } = typeof taken === "string" ? { value: taken } : (taken as { readonly value: string });
    await writeFile(path, Buffer.from(value, "base64"));
  }
}
