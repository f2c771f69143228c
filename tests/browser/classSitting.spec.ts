import { expect, type Page, test } from "@playwright/test";
import { dialingStation, testSheet } from "../support/testSheet";
import { violations } from "./axe";
import { ClassPage, joinHere, typeIn } from "./classPage";
import { dialLast, startHere, verdict } from "./sittingByKeys";
import { storedRows } from "./storedRows";

const SHEET = testSheet({
  title: "Friday test",
  stations: [dialingStation({ repetitions: 1, passMarks: { firstTime: 1 } })],
  sitting: { pauseAllowed: false, onReload: "resume", clockHideable: false },
});

const HOUR = 3_600_000;

/** What a class server answers about one assignment and its sitting. */
class OneAssignment {
  /** Ids that a sitting was asked for under, and places of the tries that were sent. */
  readonly begun: string[] = [];
  readonly tries: number[] = [];
  hasRecord = false;
  isBeginLost = false;

  async answer(page: Page): Promise<void> {
    await page.route("**/api/bench/people/*/due", (route) => route.fulfill({ json: this.due() }));
    await page.route("**/api/bench/people/*/sittings", async (route) => {
      const { sittingId } = route.request().postDataJSON();
      this.begun.push(sittingId);
      if (this.isBeginLost) return route.abort();
      return route.fulfill({ json: this.given(sittingId) });
    });
    await page.route("**/api/bench/sittings/*/tries", async (route) => {
      const { tries } = route.request().postDataJSON();
      this.tries.push(...tries.map(({ index }: { index: number }) => index));
      return route.fulfill({ json: { has: this.tries } });
    });
    await page.route("**/api/bench/sittings/*", (route) => route.fulfill({ json: this.state() }));
  }

  private due() {
    const terms = { from: Date.now() - HOUR, until: Date.now() + HOUR, state: "open", left: 2, extraTime: 25 };
    const one = { assignmentId: "a", title: SHEET.title, kind: "test", ...terms, sittings: [] };
    return { now: Date.now(), due: [one], unread: 0 };
  }

  private given(sittingId: string) {
    const now = Date.now();
    const terms = {
      kind: "test",
      seed: 5,
      seedFrom: "server",
      extraTime: 25,
      attempt: 1,
      begunAt: now,
      until: now + HOUR,
    };
    return { sittingId, assignmentId: "a", sheet: SHEET, ...terms };
  }

  private state() {
    const line = {
      sittingId: this.begun[0] ?? "",
      attempt: 1,
      begunAt: 0,
      right: 1,
      reloads: 0,
      isLate: false,
      problems: 0,
    };
    const receivedAt = this.hasRecord ? Date.now() : null;
    return { ...line, receivedAt, outcome: null, tries: 0, findings: { problems: [], remarks: [] } };
  }
}

test("a test of the class begins on the start page, is sent try by try, and says when it is sent", async ({ page }) => {
  const server = new OneAssignment();
  await joinHere(page, new ClassPage(page));
  await server.answer(page);
  await page.goto("#/start");
  const mine = page.getByRole("region", { name: "From your class" });
  await expect(mine).toContainText("Friday test");
  await expect(mine).toContainText("2 attempts left. You have 25 % extra time.");
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  expect(await violations(page)).toEqual([]);
  server.isBeginLost = true;
  await mine.getByRole("button", { name: "Begin Friday test" }).click();
  await expect(page.getByRole("alert")).toContainText("The class server does not answer.");
  server.isBeginLost = false;
  await page.goto("#/start");
  await mine.getByRole("button", { name: "Begin Friday test" }).click();
  await expect(page.getByText("Your class server drew the seed")).toBeVisible();
  // Asked again after a lost answer, it is one sitting.
  expect(new Set(server.begun).size).toBe(1);
  await startHere(page);
  await dialLast(page);
  await expect(verdict(page)).toBeVisible();
  await expect.poll(() => server.tries).toEqual([0]);
  await expect(page.getByText("This sitting is waiting to be sent.")).toBeVisible();
  server.hasRecord = true;
  await expect(page.getByText(/^This sitting was sent to your class at \d\d:\d\d\.$/)).toBeVisible({ timeout: 10_000 });
  await expect(page.getByRole("region", { name: "Record" })).toContainText("25 %");
});

test("what is due is shown without network with its age, to nobody but whose it is, and not after leaving", async ({
  page,
}) => {
  const server = new ClassPage(page);
  const terms = { from: Date.now() - HOUR, until: Date.now() + HOUR, state: "open", left: 1, extraTime: 0 } as const;
  server.due.set("p-ada", [{ assignmentId: "a", title: "Friday test", kind: "test", ...terms, sittings: [] }]);
  await joinHere(page, server, "Bo");
  await page.goto("#/start");
  await page.goto("#/join");
  await typeIn(page, "Ada");
  await page.goto("#/start");
  const mine = page.getByRole("region", { name: "From your class" });
  await expect(mine.getByRole("button", { name: "Begin Friday test" })).toBeVisible();
  server.isSilent = true;
  await page.reload();
  await expect(mine).toContainText("Friday test");
  await expect(mine).toContainText(
    /As of \d\d:\d\d, no network\. A test or practice from your class begins with its sheet/,
  );
  await expect(mine.getByRole("button", { name: "Begin Friday test" })).toHaveCount(0);
  expect(await violations(page)).toEqual([]);

  const line = page.getByRole("complementary", { name: "Class" });
  const dialog = page.getByRole("dialog", { name: "This bench and its class" });
  await line.getByRole("button", { name: "Not you?" }).click();
  await dialog.getByRole("button", { name: "I am Bo" }).click();
  await expect(line).toContainText("You are Bo");
  await expect(mine).toHaveCount(0);
  await line.getByRole("button", { name: "Not you?" }).click();
  await dialog.getByRole("button", { name: "I am Ada" }).click();
  await expect(mine).toContainText("Friday test");

  server.isSilent = false;
  await mine.getByRole("button", { name: "Ask the server again" }).click();
  await expect(mine.getByRole("button", { name: "Begin Friday test" })).toBeVisible();
  await line.getByRole("button", { name: "Not you?" }).click();
  await dialog.getByRole("button", { name: "Leave as Ada" }).click();
  await dialog.getByRole("button", { name: "Sign Ada out of this bench" }).click();
  await expect(line).toContainText("You are Bo");
  expect(JSON.stringify(await storedRows(page, "joinings"))).not.toContain("Friday test");
});
