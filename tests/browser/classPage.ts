import { gunzipSync } from "node:zlib";
import { expect, type Page, type Route, type WebSocketRoute } from "@playwright/test";
import type * as z from "zod/mini";
import type { dueAnswer } from "../../src/school/wire/assignmentsWire";
import { benchTelling } from "../../src/school/wire/liveWire";
import type { joined } from "../../src/school/wire/peopleWire";
import { recordsPart, recordsReceipt, sentRecord } from "../../src/school/wire/recordsWire";

type Joined = z.output<typeof joined>;
type Due = z.output<typeof dueAnswer>["due"];

/** The class code that is good, and the card. */
export const GOOD_CODE = "FIT 204";
export const CARD = "c".repeat(43);
export const CARD_CODE = "XK4M-7PQA-AWRT-9HJ3";
const MARK = '<head><meta name="class-server" content="/api">';

/** What a class server would answer a page, by the same schemas; the page has the mark of one. */
export class ClassPage {
  /** How often each record was taken, by its id. */
  readonly taken = new Map<string, number>();
  /** Kinds that are refused. */
  readonly refused = new Set<string>();
  isSilent = false;
  /** What it says to a bench that asks who it is; null while it does not answer that. */
  now: Joined | null = null;
  isSignedOut = false;
  /** What is due, by person. */
  readonly due = new Map<string, Due>();
  /** The server's clock behind the page's, ms. */
  behind_ms = 0;
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async open(address: string): Promise<void> {
    await this.page.context().route(
      (url) => url.pathname === "/",
      async (route) => {
        const response = await route.fetch();
        await route.fulfill({ response, body: (await response.text()).replace("<head>", MARK) });
      },
    );
    await this.page.context().route("**/api/**", (route) => this.answer(route));
    await this.page.context().routeWebSocket(/\/api\/bench\/live$/, (socket) => this.hear(socket));
    await this.page.goto(address);
  }

  /** A bench tells how it goes: its hand is as it says. */
  private hear(socket: WebSocketRoute): void {
    if (this.isSilent) return void socket.close();
    const say = (isRaised: boolean) => socket.send(JSON.stringify({ v: 1, kind: "hand", isRaised }));
    say(false);
    socket.onMessage((text) => {
      const told = benchTelling.parse(JSON.parse(String(text)));
      if (told.kind === "hand") say(told.isRaised);
    });
  }

  private async answer(route: Route): Promise<void> {
    // What a network that is not there or wants a sign-in of its own answers.
    if (this.isSilent) return route.fulfill({ contentType: "text/html", body: "<p>Sign in to this network</p>" });
    const request = route.request();
    const path = new URL(request.url()).pathname;
    const sent = request.postDataBuffer() ?? Buffer.from("{}");
    const isPacked = request.headers()["content-encoding"] === "gzip";
    const body: unknown = JSON.parse((isPacked ? gunzipSync(sent) : sent).toString("utf8"));
    if (path === "/api/bench/records") return this.takeRecords(route, body);
    if (path === "/api/bench" && (this.isSignedOut || this.now !== null)) return this.tellWho(route);
    const dueOf = /^\/api\/bench\/people\/([^/]+)\/due$/.exec(path)?.[1];
    if (dueOf !== undefined) return this.tellDue(route, dueOf);
    if (path === "/api/bench/leave") return route.fulfill({ status: 204 });
    return this.join(route, body as Record<string, string>);
  }

  private tellWho(route: Route): Promise<void> {
    if (this.isSignedOut) return refuse(route, 401, "not-signed-in");
    return route.fulfill({ json: { ...this.now, now: Date.now() } });
  }

  private tellDue(route: Route, personId: string): Promise<void> {
    if (this.isSignedOut) return refuse(route, 401, "not-signed-in");
    return route.fulfill({ json: { now: Date.now(), due: this.due.get(personId) ?? [], unread: 0 } });
  }

  private async join(route: Route, { code, name = "Bo", token }: Record<string, string>): Promise<void> {
    if (token !== CARD && code !== GOOD_CODE && code !== CARD_CODE) return refuse(route, 410, "code-not-valid");
    const person = { id: `p-${name.toLowerCase()}`, name };
    const answer: Joined = {
      school: { id: "s", name: "Millbrook" },
      class: { id: "c", name: "Fitters 1" },
      person,
      deviceId: "d",
      now: Date.now(),
    };
    return route.fulfill({ json: answer });
  }

  private async takeRecords(route: Route, body: unknown): Promise<void> {
    if (this.isSignedOut) return refuse(route, 401, "not-signed-in");
    const receipts = recordsPart.parse(body).records.map((one) => {
      const { kind, record } = sentRecord.parse(one);
      if (this.refused.has(kind)) {
        return { id: record.id, outcome: "refused" as const, problem: { code: "not-allowed", path: [], values: {} } };
      }
      const before = this.taken.get(record.id) ?? 0;
      this.taken.set(record.id, before + 1);
      return { id: record.id, outcome: before === 0 ? ("received" as const) : ("known" as const) };
    });
    return route.fulfill({ json: recordsReceipt.parse({ now: Date.now() - this.behind_ms, receipts }) });
  }
}

/** Joins by code, by keys alone. */
export async function joinHere(page: Page, server: ClassPage, name = "Ada"): Promise<void> {
  await server.open("#/join");
  await typeIn(page, name);
}

/** Fills the page in by keys alone. */
export async function typeIn(page: Page, name = "Ada"): Promise<void> {
  await expect(page.getByLabel("Class code")).toBeFocused();
  await page.keyboard.type(GOOD_CODE);
  await page.keyboard.press("Tab");
  await page.keyboard.type(name);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "You joined the class" })).toBeVisible();
}

const refuse = (route: Route, status: number, code: string): Promise<void> =>
  route.fulfill({ status, json: { problem: { code, path: [], values: {} } } });
