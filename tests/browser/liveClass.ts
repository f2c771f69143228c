import type { Browser, Page } from "@playwright/test";
import type { z } from "zod/mini";
import { readSittingRecord } from "../../src/records/sitting/readSittingRecord";
import { checkReceipt } from "../../src/school/signing/checkReceipt";
import type { Receipt } from "../../src/school/signing/receipt";
import type { classResults, sittingState } from "../../src/school/wire/assignmentsWire";
import { dialingStation, testSheet } from "../support/testSheet";
import { Bench } from "./bench";
import { expect, makeClass, openView, type RunningServer, setUpSchool } from "./classServer";
import { dialLast, startHere, verdict } from "./sittingByKeys";

/** The line of the class under the head of a bench's page. */
export const classLine = (page: Page) => page.getByRole("complementary", { name: "Class" });
/** How it stands with sending. */
export const sending = (page: Page) => classLine(page).getByRole("status").last();

/** A browser in which somebody has joined the class. */
export async function joinedBench(browser: Browser, address: string, code: string, name: string): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${address}#/join`);
  await page.getByLabel("Class code").fill(code);
  await page.getByLabel("Your name").fill(name);
  await page.getByRole("button", { name: "Join the class" }).click();
  await expect(page.getByRole("heading", { name: "You joined the class" })).toBeVisible();
  return page;
}

/** The first instructor sets up the school and a class, and has a code for it. @returns the code */
export async function openClass(page: Page, server: RunningServer): Promise<string> {
  await setUpSchool(page, server);
  await makeClass(page, "Fitters 1");
  await page.getByRole("button", { name: "New code" }).click();
  const code = page.locator(".class-code b");
  await expect(code).toHaveText(/^\w{4}-\w{4}$/);
  return (await code.textContent()) ?? "";
}

/** The board of the class, open on an instructor's page. */
export class Board {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async open(): Promise<void> {
    await openView(this.page, "Live board");
    await expect(this.page.getByText("Live: this page shows every change as it comes.")).toBeVisible();
  }

  /** The benches, by the names at them, as they stand from top to bottom. */
  get names() {
    return this.page.getByRole("table", { name: "Live board" }).getByRole("rowheader");
  }

  row(name: string) {
    return this.page.getByRole("row").filter({ has: this.page.getByRole("rowheader", { name }) });
  }
}

/** Asks the server as the instructor whose page it is. */
async function ask<Answer>(page: Page, path: string, body?: object): Promise<Answer> {
  return page.evaluate(
    async ([where, what]) => {
      const { csrf } = await (await fetch("/api/me")).json();
      const headers = { "content-type": "application/json", "x-csrf": csrf };
      const answer = await fetch(
        where,
        what === undefined ? {} : { method: "POST", headers, body: JSON.stringify(what) },
      );
      if (!answer.ok) throw new Error(`${where}: ${answer.status} ${await answer.text()}`);
      return answer.json();
    },
    [path, body] as const,
  );
}

const SHEET = testSheet({
  title: "Friday test",
  stations: [dialingStation({ repetitions: 2, passMarks: { firstTime: 1 } })],
  sitting: { pauseAllowed: false, onReload: "resume", clockHideable: false },
});

/** How long a test can be begun, ms: it is begun well before, and what ends offline comes well after. */
const WINDOW_MS = 15_000;

/** What a class server has of a sitting that came in: how it stands there, and its signed record. */
interface CameIn {
  readonly state: z.infer<typeof sittingState>;
  readonly signed: { readonly sha256: string; readonly record: unknown; readonly receipt: Receipt };
}

/**
 * An instructor and three benches at once: they join and turn, and the board shows all three; one raises a hand, which the
 * instructor lowers; one loses the network in a test that the instructor gave, goes on, ends and comes back.
 *
 * @returns what the server has of the test then
 */
export async function liveClass(page: Page, browser: Browser, server: RunningServer): Promise<CameIn> {
  const { address } = server;
  const code = await openClass(page, server);
  const [ada, bo, cy] = await Promise.all(["Ada", "Bo", "Cy"].map((name) => joinedBench(browser, address, code, name)));
  if (ada === undefined || bo === undefined || cy === undefined) throw new Error("three benches join");
  const board = new Board(page);
  await board.open();
  for (const bench of [ada, bo, cy]) {
    await bench.goto(`${address}#/bench?seed=5`);
    await expect(classLine(bench).getByRole("button", { name: "Ask for help" })).toBeVisible();
  }
  await expect(board.names).toHaveText([/^Ada/, /^Bo/, /^Cy/]);
  await expect(board.row("Ada")).toContainText("Dialing, number 1 of 3");

  await board.row("Bo").getByRole("button", { name: "Watch Bo" }).click();
  const watched = page.getByRole("region", { name: /^Bo/ });
  await expect(watched).toContainText("No motion to show");
  for (const bench of [ada, bo]) await dialLast(bench);
  await expect(board.row("Ada")).toContainText("right, ");
  await expect(watched.getByRole("region", { name: "Turn chart" })).toBeVisible();
  await expect(watched.getByRole("region", { name: "What happened" })).toContainText("Opened");
  await watched.getByRole("button", { name: "Play" }).click();
  await expect(watched.getByRole("button", { name: "Pause" })).toBeVisible();
  await watched.getByRole("button", { name: "Close" }).click();

  await classLine(cy).getByRole("button", { name: "Ask for help" }).press("Enter");
  await expect(classLine(cy)).toContainText("Your hand is up. Your instructor sees it.");
  await expect(board.names).toHaveText([/^Cy/, /^Ada/, /^Bo/]);
  await expect(board.row("Cy")).toContainText("needs help since");
  await cy.reload();
  await expect(classLine(cy)).toContainText("Your hand is up. Your instructor sees it.");
  await board.row("Cy").getByRole("button", { name: "Lower the hand of Cy" }).click();
  await expect(classLine(cy)).toContainText("Your instructor has lowered your hand.");
  await expect(board.row("Cy")).not.toContainText("needs help");
  await bo.context().close();
  await expect(board.row("Bo")).toContainText("offline since");

  return sitOffline(page, ada, address);
}

/** A test that the instructor gives, sat by somebody whose network goes in the middle. */
async function sitOffline(instructor: Page, bench: Page, address: string): Promise<CameIn> {
  const classId = new URLSearchParams(new URL(instructor.url()).hash.split("?")[1]).get("id");
  const until = Date.now() + WINDOW_MS;
  const terms = { kind: "test", from: Date.now() - 1000, until, attempts: 1, people: null, extraTime: [] };
  const { id } = await ask<{ id: string }>(instructor, "/api/assignments", { classId, sheet: SHEET, ...terms });
  await bench.goto(`${address}#/start`);
  await bench.getByRole("button", { name: "Begin Friday test" }).click();
  await startHere(bench);
  const board = new Board(instructor);
  await expect(board.row("Ada")).toContainText("Sitting “Friday test”");
  await bench.context().setOffline(true);
  const dial = new Bench(bench);
  await dialLast(bench);
  await expect(bench.getByTestId("try-state")).toHaveText(/^This try has ended/);
  await bench.getByRole("button", { name: /next try/i }).click();
  await expect(dial.dial).toBeFocused();
  await dialLast(bench);
  await expect(verdict(bench)).toBeVisible();
  await expect(sending(bench)).toHaveText(/waiting, no network/);
  await expect.poll(() => Date.now() > until, { timeout: WINDOW_MS }).toBe(true);
  await bench.context().setOffline(false);
  await expect(sending(bench)).toHaveText(/^All sent/, { timeout: 20_000 });
  const results = await ask<z.infer<typeof classResults>>(instructor, `/api/classes/${classId}/results`);
  const of = results.people.find(({ name }) => name === "Ada")?.results.find(({ assignmentId }) => assignmentId === id);
  const sittingId = of?.latest?.sittingId ?? "";
  return {
    state: await ask(instructor, `/api/sittings/${sittingId}`),
    signed: await ask(instructor, `/api/records/${encodeURIComponent(sittingId)}/signed`),
  };
}

/** Whether that is what came of a test which ended without network, after its time: kept, marked as late, and signed. */
export function expectLateAndSigned({ state, signed }: CameIn): void {
  expect(state).toMatchObject({ isLate: true, outcome: "passed", right: 1, problems: 0 });
  // Once the network is back tries and record go at the same time, and any may come first: what is told says how they came, if they waited long.
  const [late, ...network] = state.findings.remarks.map(({ code }) => code);
  expect(late).toBe("sent-late");
  expect(["tries-with-the-end", "tries-waited"]).toEqual(expect.arrayContaining(network));
  const { receipt } = signed;
  const { sha256 } = readSittingRecord({ record: signed.record, sha256: signed.sha256 });
  const check = checkReceipt(receipt, sha256, [receipt.statement.key]);
  expect([check.isTrusted, check.problems]).toEqual([true, []]);
  expect(check.statement?.person.name).toBe("Ada");
  expect(check.statement?.sitting).toMatchObject({
    isLate: true,
    outcome: "passed",
    assignment: { title: SHEET.title },
  });
}
