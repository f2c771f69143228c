import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { test as base, type Page } from "@playwright/test";
import { expect, test } from "../page";
import { serveBuilt } from "../staticServer";

declare global {
  interface Window {
    /** What the page's policy refused, since the page began to load. */
    refused?: string[];
    /** Set by code that should never have run. */
    hasRun?: string;
  }
}

/** Every screen, and those that fetch parts of their own. */
const ROUTES = [
  "#/start",
  "#/words?word=gate",
  "#/bench?seed=5",
  "#/bench?profile=dial-encoder&seed=5",
  "#/fitting?seed=3",
  "#/fitting?view=service&seed=3",
  "#/fitting?view=find&seed=3",
  "#/zeroing?seed=5",
  "#/handover?view=run&seed=5",
  "#/handover?view=change&seed=5",
  "#/handover?view=trouble&seed=5",
  "#/handover?view=holdback&seed=5",
  "#/handover?view=record",
  "#/sheets",
  "#/sheets?sample=11",
  "#/sittings",
  "#/sittings?sheet=friday-sitting",
  "#/logbook?view=attempts",
  "#/logbook?view=progress",
  "#/logbook?view=sittings",
  "#/logbook?view=jobs",
  "#/logbook?view=files",
  "#/desk",
  "#/dial",
  "#/dial?view=print",
  "#/join",
  "#/instructor",
] as const;

/** Counts what is refused, from before the page's own scripts. */
const watchRefusals = (page: Page) =>
  page.addInitScript(() => {
    window.refused = [];
    document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI, sample }) => {
      window.refused?.push(`${effectiveDirective} ${blockedURI} ${sample}`);
    });
  });

const refused = (page: Page) => page.evaluate(() => window.refused ?? ["nothing was counted"]);

test("every file comes with the headers of the policy", async ({ request }) => {
  for (const path of ["", "sw.js", "manifest.webmanifest", "icon.svg"]) {
    const headers = (await request.get(path)).headers();
    expect(headers["content-security-policy"], path).toContain("default-src 'self'");
    expect(headers["content-security-policy"], path).toContain("frame-ancestors 'none'");
    expect(headers["content-security-policy"], path).not.toMatch(/unsafe|data:|blob:|https?:|\*/);
    expect(headers["permissions-policy"], path).toBe("camera=(self), microphone=(), geolocation=()");
    expect(headers["x-content-type-options"], path).toBe("nosniff");
    expect(headers["x-frame-options"], path).toBe("DENY");
    expect(headers["referrer-policy"], path).toBe("no-referrer");
  }
});

for (const route of ROUTES) {
  test(`nothing on ${route} is refused by the policy`, async ({ page }) => {
    await watchRefusals(page);
    await page.goto(route);
    await expect(page.locator("main :is(h1, h2, button, svg)").first()).toBeVisible();
    await page.waitForLoadState("networkidle");
    expect(await refused(page)).toEqual([]);
  });
}

test.describe("with its worker", () => {
  test.use({ serviceWorkers: "allow" });

  test("the app is installed for offline use under the policy", async ({ page }) => {
    await watchRefusals(page);
    await page.goto("#/bench?seed=5");
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await page.goto("#/desk");
    expect(await refused(page)).toEqual([]);
  });
});

/** What a page may ask a person for: every device that turns a dial, and nothing that hears or says where it is. */
const FEATURES = {
  camera: true,
  serial: true,
  midi: true,
  gyroscope: true,
  gamepad: true,
  "screen-wake-lock": true,
  microphone: false,
  geolocation: false,
};

test("a page may ask for devices that turn a dial, and not for what it does not need", async ({ page }) => {
  await page.goto("#/dial");
  const allowed = await page.evaluate((names) => {
    const { featurePolicy } = document as unknown as { featurePolicy: { allowsFeature(name: string): boolean } };
    return Object.fromEntries(names.map((name) => [name, featurePolicy.allowsFeature(name)]));
  }, Object.keys(FEATURES));
  expect(allowed).toEqual(FEATURES);
});

/** Ways to bring in what is not the app's own; each with what the refusal says: the directive, or the browser's words. */
const ATTACKS = [
  {
    name: "a script written into the page",
    says: "require-trusted-types-for",
    run: () => {
      const script = document.createElement("script");
      script.textContent = "window.hasRun = 'inline script'";
      document.body.append(script);
    },
  },
  {
    name: "a script's text as a node",
    says: "will not be executed",
    run: () => {
      const script = document.createElement("script");
      script.append(document.createTextNode("window.hasRun = 'script node'"));
      document.body.append(script);
    },
  },
  {
    name: "a script from elsewhere",
    says: "require-trusted-types-for",
    run: () => {
      const script = document.createElement("script");
      script.src = "http://127.0.0.1:9/other.js";
      document.body.append(script);
    },
  },
  {
    name: "markup with a handler",
    says: "require-trusted-types-for",
    run: () => {
      document.body.insertAdjacentHTML("beforeend", "<img src=x onerror=\"window.hasRun='handler'\">");
    },
  },
  {
    name: "a handler as an attribute",
    says: "require-trusted-types-for",
    run: () => {
      const button = document.createElement("button");
      document.body.append(button);
      button.setAttribute("onclick", "window.hasRun='attribute'");
      button.click();
    },
  },
  {
    name: "code made from text",
    says: "require-trusted-types-for",
    // biome-ignore lint/security/noGlobalEval: the attack itself
    run: () => void globalThis.eval("window.hasRun = 'eval'"),
  },
  {
    name: "a javascript: address",
    says: "script-src-elem",
    run: () => {
      const link = document.createElement("a");
      link.href = "javascript:void (window.hasRun = 'address')";
      document.body.append(link);
      link.click();
    },
  },
  {
    name: "an image from elsewhere",
    says: "img-src",
    run: () => {
      document.body.append(Object.assign(new Image(), { src: "http://127.0.0.1:9/other.png" }));
    },
  },
  {
    name: "an image from an address that is data",
    says: "img-src",
    run: () => {
      document.body.append(Object.assign(new Image(), { src: "data:image/gif;base64,R0lGODlhAQABAAAAACw=" }));
    },
  },
  {
    name: "a frame from elsewhere",
    says: "frame-src",
    run: () => {
      const frame = document.createElement("iframe");
      frame.src = "http://127.0.0.1:9/";
      document.body.append(frame);
    },
  },
  {
    name: "a style as an attribute",
    says: "style-src-attr",
    run: () => document.body.setAttribute("style", "display: none"),
  },
  {
    name: "a style sheet written into the page",
    says: "style-src-elem",
    run: () => {
      const style = document.createElement("style");
      style.append("body { display: none }");
      document.head.append(style);
    },
  },
  {
    name: "a word sent elsewhere",
    says: "connect-src",
    run: () => void fetch("http://127.0.0.1:9/", { method: "POST", body: "62-19-47" }).catch(() => undefined),
  },
  {
    name: "a form sent elsewhere",
    says: "form-action",
    run: () => {
      const form = Object.assign(document.createElement("form"), { action: "http://127.0.0.1:9/", method: "post" });
      document.body.append(form);
      form.submit();
    },
  },
  {
    name: "a worker made from text",
    says: "require-trusted-types-for",
    run: () => void new Worker(URL.createObjectURL(new Blob(["postMessage(1)"]))),
  },
  {
    name: "another base for every address",
    says: "base-uri",
    run: () => document.head.append(Object.assign(document.createElement("base"), { href: "http://127.0.0.1:9/" })),
  },
  {
    name: "a second policy for scripts",
    says: "trusted-types",
    run: () => {
      const { trustedTypes } = window as unknown as {
        trustedTypes: { createPolicy(name: string, rules: object): void };
      };
      trustedTypes.createPolicy("mine", { createScript: (text: string) => text });
    },
  },
];

/** The page reports each refusal as an error of its own, and here they are looked for. */
const attack = base;

for (const { name, says, run } of ATTACKS) {
  attack(`${name} is refused`, async ({ page }) => {
    // Without the server's headers: the page's own policy must do.
    const server = await serveBuilt();
    try {
      const errors: string[] = [];
      page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
      await watchRefusals(page);
      await page.goto(`${server.address}#/bench?seed=5`);
      await expect(page.getByRole("slider")).toBeVisible();
      // Later, and not inside the tester's own call, which the browser lets off.
      await page.evaluate(`setTimeout(${run.toString()}, 0)`);
      await expect.poll(async () => [...(await refused(page)), ...errors].join("\n")).toContain(says);
      expect(await page.evaluate(() => window.hasRun)).toBeUndefined();
    } finally {
      await server.close();
    }
  });
}

attack("another page cannot put the app into a frame", async ({ page, baseURL }) => {
  const around = createServer((_, response) => {
    response.writeHead(200, { "content-type": "text/html" }).end(`<iframe src="${baseURL}"></iframe>`);
  });
  await new Promise<void>((resolve) => {
    around.listen(0, "127.0.0.1", resolve);
  });
  try {
    const said = page.waitForEvent("console", (message) => message.text().includes("frame-ancestors"));
    await page.goto(`http://127.0.0.1:${(around.address() as AddressInfo).port}/`);
    await said;
    await expect(page.frameLocator("iframe").getByText("Gatefall")).toHaveCount(0);
  } finally {
    around.close();
  }
});
