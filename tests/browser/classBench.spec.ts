import { expect, type Page, test } from "@playwright/test";
import { violations } from "./axe";
import { Bench } from "./bench";
import { CARD, CARD_CODE, ClassPage, GOOD_CODE, joinHere, typeIn } from "./classPage";
import { dialLast } from "./sittingByKeys";
import { storedRows } from "./storedRows";

const line = (page: Page) => page.getByRole("complementary", { name: "Class" });
/** How it stands with sending; before it stands what became of a raised hand. */
const sending = (page: Page) => line(page).getByRole("status").last();
const dialog = (page: Page) => page.getByRole("dialog", { name: "This bench and its class" });

test("a bench joins by keys alone; what is practiced without network is sent when it is back", async ({ page }) => {
  const server = new ClassPage(page);
  await joinHere(page, server);
  await expect(line(page)).toContainText("You are Ada, Fitters 1.");
  server.isSilent = true;
  await page.goto("#/bench?seed=5");
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
  await expect(sending(page)).toHaveText(/^\d waiting, no network$/);
  await page.reload();
  await expect(sending(page)).toHaveText(/^\d waiting, no network$/);
  server.isSilent = false;
  await page.evaluate(() => dispatchEvent(new Event("online")));
  await expect(sending(page)).toHaveText(/^All sent \d\d:\d\d$/);
  const rows = await storedRows(page, "attempts");
  expect(rows).toHaveLength(1);
  expect([...server.taken]).toEqual(rows.map(({ id }) => [id, 1]));
  expect(rows).toMatchObject([{ personId: "p-ada" }]);
});

test("records from before joining go to the class when a person says that they are theirs, and else stay", async ({
  page,
}) => {
  const server = new ClassPage(page);
  await server.open("#/bench?seed=5");
  await expect(line(page)).toContainText("This bench has not joined a class.");
  await dialLast(page);
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  await line(page).getByRole("link", { name: "Join a class" }).click();
  await typeIn(page);
  await expect(page.getByRole("heading", { name: "Are the records on this bench yours?" })).toBeVisible();
  expect(server.taken.size).toBe(0);
  await page.getByRole("button", { name: "They are mine: give them to Ada" }).click();
  // What was there to send before is all sent already.
  await expect.poll(() => server.taken.size).toBe(1);
  await expect(sending(page)).toHaveText(/^All sent/);
  expect(await storedRows(page, "people")).toMatchObject([{ id: "p-ada", name: "Ada" }]);
  const [row] = await storedRows(page, "attempts");
  expect(row).toMatchObject({ personId: "p-ada", opened: true });
  expect(server.taken.get(String(row?.id))).toBe(1);
});

test("a card joins with one press, and stays in no address; who is not it leaves", async ({ page }) => {
  const server = new ClassPage(page);
  await server.open(`#/join?card=${CARD}`);
  await expect(page.getByRole("button", { name: "Join the class" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(line(page)).toContainText("You are Bo, Fitters 1.");
  expect(page.url()).not.toContain(CARD);
  await page.reload();
  await expect(line(page)).toContainText("You are Bo, Fitters 1.");
  await line(page).getByRole("button", { name: "Not you?" }).click();
  await dialog(page).getByRole("button", { name: "Leave as Bo" }).click();
  await dialog(page).getByRole("button", { name: "Sign Bo out of this bench" }).click();
  // Where one joins, the line has nothing to say.
  await expect(line(page)).toHaveCount(0);
  await expect(page.getByLabel("Class code")).toBeVisible();
  await page.getByRole("link", { name: "Start", exact: true }).click();
  await expect(line(page)).toContainText("This bench has not joined a class.");
});

test("a second card that is scanned at the same bench asks for its own person", async ({ page }) => {
  await new ClassPage(page).open(`#/join?card=${CARD}`);
  await page.getByRole("button", { name: "Join the class" }).click();
  await expect(page.getByRole("heading", { name: "You joined the class" })).toBeVisible();
  await page.evaluate((card) => location.assign(`#/join?card=${card}`), "d".repeat(43));
  await expect(page.getByRole("heading", { name: "Join a class" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Join the class" })).toBeFocused();
});

test("somebody else joins right after the first, on the page that says who joined", async ({ page }) => {
  await new ClassPage(page).open(`#/join?card=${CARD}`);
  await page.getByRole("button", { name: "Join the class" }).click();
  await expect(page.getByRole("heading", { name: "You joined the class" })).toBeVisible();
  await line(page).getByRole("button", { name: "Not you?" }).click();
  await dialog(page).getByRole("button", { name: "Join as someone else" }).click();
  await expect(page.getByRole("heading", { name: "Join a class" })).toBeVisible();
  await expect(page.getByLabel("Your name")).toBeVisible();
});

test("a person whose camera fails joins by the code on the card, without a name", async ({ page }) => {
  await new ClassPage(page).open("#/join");
  await page.getByLabel("Class code").fill(CARD_CODE);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "You joined the class" })).toBeVisible();
  await expect(line(page)).toContainText("You are Bo, Fitters 1.");
});

test("a class code without a name is not sent", async ({ page }) => {
  await new ClassPage(page).open("#/join");
  await page.getByLabel("Class code").fill(GOOD_CODE);
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Your name")).toBeFocused();
});

test("a wrong code is told in a sentence, and so is a server that does not answer", async ({ page }) => {
  const server = new ClassPage(page);
  await server.open("#/join");
  await page.getByLabel("Class code").fill("wrong");
  await page.getByLabel("Your name").fill("Ada");
  await page.getByRole("button", { name: "Join the class" }).click();
  await expect(page.getByRole("alert")).toHaveText(/^Not done: this class code is not valid now; .*\.$/);
  server.isSilent = true;
  await page.getByRole("button", { name: "Join the class" }).click();
  await expect(page.getByRole("alert")).toHaveText(
    "The class server does not answer. Check the network of this bench, then try again.",
  );
  expect(await violations(page)).toEqual([]);
});

test("what the server refuses is explained and saved as a file; a clock that is wrong is told", async ({ page }) => {
  const server = new ClassPage(page);
  await joinHere(page, server);
  server.refused.add("attempts");
  server.behind_ms = 10 * 60_000;
  await page.goto("#/bench?seed=5");
  await dialLast(page);
  await expect(sending(page)).toHaveText(/1 refused$/);
  await line(page)
    .getByRole("button", { name: /refused/ })
    .click();
  await expect(dialog(page)).toContainText(
    "you may not do this; ask the instructor of the class or the head of the school.",
  );
  await expect(dialog(page)).toContainText("The clock of this bench is 10 minutes ahead of the server’s.");
  const saving = page.waitForEvent("download");
  await dialog(page).getByRole("button", { name: "Save the refused records as a file" }).click();
  expect((await saving).suggestedFilename()).toBe("gatefall-refused.json");
  expect(await violations(page)).toEqual([]);
  server.refused.clear();
  await dialog(page).getByRole("button", { name: "Send now" }).click();
  await expect(sending(page)).toHaveText(/^All sent/);
});

test("a page that no class server sent asks for nothing and has no page to join at", async ({ page }) => {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.goto("#/join");
  await expect(page).toHaveURL(/#\/start$/);
  await page.goto("#/bench?seed=5");
  await expect(new Bench(page).dial).toBeVisible();
  await expect(line(page)).toHaveCount(0);
  expect(asked.filter((path) => path.startsWith("/api"))).toEqual([]);
});

test("a bench hears on its start that its person has another name, and that it was signed out", async ({ page }) => {
  const server = new ClassPage(page);
  await joinHere(page, server);
  server.now = {
    school: { id: "s", name: "Millbrook" },
    class: { id: "c", name: "Fitters 1" },
    person: { id: "p-ada", name: "Ada Hill" },
    people: [{ id: "p-ada", name: "Ada Hill" }],
    deviceId: "d",
    now: 0,
  };
  await page.reload();
  await expect(page.getByText("Your instructor changed the name Ada to Ada Hill.")).toBeVisible();
  await expect(line(page)).toContainText("You are Ada Hill");
  expect(await violations(page)).toEqual([]);
  await page.getByRole("button", { name: "Close this message" }).click();
  await expect(page.getByText("Your instructor changed the name")).toHaveCount(0);
  await page.reload();
  await expect(line(page)).toContainText("You are Ada Hill");
  server.isSignedOut = true;
  await page.reload();
  await expect(page.getByText("This bench is signed out of the class.")).toBeVisible();
});
