import type { Page } from "@playwright/test";
import { expectGoodInEveryLook } from "./axe";
import { expect, makeClass, openView, setUpSchool, test } from "./classServer";

// A server of its own comes first.
test.setTimeout(120_000);

const names = (page: Page) => page.getByRole("table", { name: "Roster" }).getByRole("rowheader");
const csv = (text: string) => ({ name: "names.csv", mimeType: "text/csv", buffer: Buffer.from(text) });

/** Makes a code, and gives it. */
async function newCode(page: Page): Promise<string> {
  await page.getByRole("button", { name: "New code" }).click();
  const code = page.locator(".class-code b");
  await expect(code).toHaveText(/^\w{4}-\w{4}$/);
  return (await code.textContent()) ?? "";
}

test("the first link makes a school; its head signs out and in again by keys alone", async ({ page, classServer }) => {
  await setUpSchool(page, classServer);
  expect(page.url(), "the link is not in the address any more").not.toContain("token");
  await expect(page.getByText("Signed in: Orla Finch, Millbrook Trades")).toBeVisible();
  await page.getByRole("button", { name: "Sign out" }).click();
  await expect(page.getByLabel("Sign-in name")).toBeFocused();
  await page.keyboard.type("orla");
  await page.keyboard.press("Tab");
  await page.keyboard.type("four plain words here");
  await page.keyboard.press("Enter");
  await expect(page.getByText("Signed in: Orla Finch")).toBeVisible();
  await page.reload();
  await expect(page.getByText("Signed in: Orla Finch")).toBeVisible();
});

test("an instructor makes a class; another browser joins by its code, and the roster shows who", async ({
  page,
  browser,
  classServer,
}) => {
  await setUpSchool(page, classServer);
  await makeClass(page, "Fitters 1");
  await expect(page.getByText("This class has no code now.")).toBeVisible();
  const code = await newCode(page);
  const other = await browser.newContext();
  const joined = await other.request.post(`${classServer.address}api/join`, {
    data: { code: code.toLowerCase(), name: "Mibsy", bench: "Bench 3" },
  });
  expect(joined.status()).toBe(200);

  await openView(page, "Roster and cards");
  await expect(names(page)).toHaveText([/^Mibsy joined by code/]);
  await page.getByRole("button", { name: "Change Mibsy" }).click();
  const dialog = page.getByRole("dialog", { name: "Mibsy" });
  await dialog.getByLabel("Name").fill("Mibsy Rowe");
  await dialog.getByLabel("Extra time in sittings").fill("25");
  await dialog.getByRole("button", { name: "Save: this person belongs here" }).click();
  await expect(page.getByRole("row", { name: /^Mibsy Rowe 25 %/ })).toBeVisible();

  await openView(page, "Benches");
  await expect(page.getByRole("listitem")).toContainText("Mibsy Rowe; last seen");
  await page.getByRole("button", { name: "Sign out Bench 3" }).click();
  await expect(page.getByText("Bench 3 is signed out.")).toBeVisible();
  expect((await other.request.get(`${classServer.address}api/bench`)).status()).toBe(401);

  await openView(page, "Join");
  await page.getByRole("button", { name: `End the code ${code}` }).click();
  await expect(page.getByText(`${code} is not good any more.`)).toBeVisible();
  const late = await other.request.post(`${classServer.address}api/join`, {
    data: { code, name: "Tavro", bench: "Bench 4" },
  });
  expect(late.status()).toBe(410);
  await other.close();
});

test("names come from a file after a preview; cards are printed, and a lost one is replaced", async ({
  page,
  browser,
  classServer,
}) => {
  await setUpSchool(page, classServer);
  await makeClass(page, "Fitters 2");
  await openView(page, "Roster and cards");
  await page.getByLabel("Name to add").fill("Jorrel");
  await page.keyboard.press("Enter");
  await expect(names(page)).toHaveText(["Jorrel"]);
  await page.locator("input[type=file]").setInputFiles(csv("name,extra time\nOndrell,50\njorrel,\n,\n Tavro ,x\n"));
  const preview = page.getByRole("table", { name: "Preview" });
  await expect(preview.getByRole("row")).toHaveText([
    /^Row/,
    /^Line 2Ondrellnew, extra time 50 %$/,
    /^Line 3Jorrelis in this class already$/i,
    /^Line 5Tavroleft out: /,
  ]);
  await expect(names(page), "nothing is written yet").toHaveText(["Jorrel"]);
  await page.getByRole("button", { name: "Put 2 people on the roster" }).click();
  await expect(page.getByText("1 new, 1 known, 1 left out.")).toBeVisible();
  await expect(page.getByRole("heading", { name: /^Roster/ }), "where one goes on").toBeFocused();
  await expect(names(page)).toHaveText(["Jorrel", "Ondrell"]);

  await page.getByRole("button", { name: "Make join cards for everyone who has none" }).click();
  await expect(page.getByRole("img", { name: /^QR code of the join card of/ })).toHaveCount(2);
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("button", { name: "Print the cards" })).toBeHidden();
  await expect(page.getByRole("listitem").filter({ hasText: "Ondrell" })).toContainText("Fitters 2, Millbrook Trades");
  await page.emulateMedia({ media: "screen" });
  await page.getByRole("button", { name: "Done: back to the roster" }).click();

  const made = page.waitForResponse((response) => response.url().endsWith("/cards"));
  await page.getByRole("button", { name: "Lost: new card for Ondrell" }).click();
  const { cards } = await (await made).json();
  await expect(page.getByRole("img", { name: "QR code of the join card of Ondrell" })).toBeVisible();
  const other = await browser.newContext();
  const joined = await other.request.post(`${classServer.address}api/join/card`, {
    data: { token: cards[0].token, bench: "Bench 1" },
  });
  expect(await joined.json()).toMatchObject({ person: { name: "Ondrell" } });
  await other.close();
});

test("a head invites an instructor, who sets up by the link and sees the classes", async ({
  page,
  browser,
  classServer,
}) => {
  await setUpSchool(page, classServer);
  await makeClass(page, "Fitters 3");
  await page.getByRole("link", { name: "Instructors" }).click();
  await page.getByRole("button", { name: "Invite an instructor" }).click();
  const address = await page.locator("code").textContent();

  const other = await browser.newContext();
  const second = await other.newPage();
  await second.goto(address ?? "");
  await second.getByLabel("Your name").fill("Bram Ellery");
  await second.getByLabel("Sign-in name").fill("bram");
  await second.getByLabel("Password").fill("other plain words");
  await second.getByRole("button", { name: "Sign up" }).click();
  await expect(second.getByRole("link", { name: "Fitters 3" })).toBeVisible();
  await expect(second.getByRole("link", { name: "Instructors" })).toHaveCount(0);
  await second.getByRole("button", { name: "Sign out" }).click();

  const open = page.getByRole("region", { name: "Links that nobody has used" });
  await page.getByRole("button", { name: "Invite another head" }).click();
  await expect(open.getByRole("listitem")).toHaveText(/^Invites one head/);
  const astray = (await page.locator("code").textContent()) ?? "";
  await open.getByRole("button", { name: "Take it back" }).click();
  await expect(open).toBeHidden();
  await second.goto(astray);
  await second.getByLabel("Your name").fill("Nobody");
  await second.getByLabel("Sign-in name").fill("nobody");
  await second.getByLabel("Password").fill("yet other words");
  await second.getByRole("button", { name: "Sign up" }).click();
  await expect(second.getByRole("alert")).toBeVisible();
  await other.close();

  await page.getByRole("link", { name: "Classes" }).click();
  await page.getByRole("link", { name: "Fitters 3" }).click();
  await page.getByRole("button", { name: "End the class" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "End the class" }).click();
  await expect(page.getByText("This class has ended. Nobody can join it.")).toBeVisible();
});

test("an instructor sees where they are signed in, ends one of them, and changes the password", async ({
  page,
  browser,
  classServer,
}) => {
  await setUpSchool(page, classServer);
  const other = await browser.newContext();
  const second = await other.newPage();
  await second.goto(`${classServer.address}#/instructor`);
  await second.getByLabel("Sign-in name").fill("orla");
  await second.getByLabel("Password").fill("four plain words here");
  await second.keyboard.press("Enter");
  await expect(second.getByRole("heading", { name: "Classes" })).toBeVisible();

  await page.getByRole("link", { name: "Your password and sign-ins" }).click();
  const places = page.getByRole("region", { name: "Where you are signed in" }).getByRole("listitem");
  await expect(places).toHaveCount(2);
  await page.getByRole("button", { name: "Sign out there" }).click();
  await expect(places).toHaveCount(1);
  await expect(places).toContainText("this browser");
  await second.reload();
  await expect(second.getByRole("heading", { name: "Sign in as an instructor" })).toBeVisible();

  await page.getByRole("button", { name: "Change your password" }).click();
  await page.getByLabel("Password now").fill("four plain words here");
  await page.getByLabel("New password").fill("five other plain words");
  await page.getByRole("button", { name: "Change the password" }).click();
  await expect(page.getByText("Your password is changed.")).toBeVisible();
  await second.getByLabel("Sign-in name").fill("orla");
  await second.getByLabel("Password").fill("five other plain words");
  await second.keyboard.press("Enter");
  await expect(second.getByRole("heading", { name: "Classes" })).toBeVisible();
  await other.close();
});

test("without a class server the address leads to the start page, and nothing is asked for", async ({ page }) => {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname));
  await page.goto("#/instructor");
  await expect(page).toHaveURL(/#\/start$/);
  expect(asked.filter((path) => path.startsWith("/api"))).toEqual([]);
});

test("axe finds nothing wrong in any view, and nothing lies beside the page", { tag: "@long" }, async ({
  page,
  classServer,
}) => {
  const judge = (what: string) => expectGoodInEveryLook(page, what);
  await page.goto(`${classServer.address}${classServer.firstLink}`);
  await page.getByLabel("School").waitFor();
  await judge("first link");
  await setUpSchool(page, classServer);
  await judge("no class");
  await makeClass(page, "Fitters 1");
  await newCode(page);
  await judge("code");
  await openView(page, "Roster and cards");
  await judge("no roster");
  await page.locator("input[type=file]").setInputFiles(csv("name\nOndrell\nTavro\n,"));
  await page.getByRole("table", { name: "Preview" }).waitFor();
  await judge("preview");
  await page.getByRole("button", { name: /^Put 2 people/ }).click();
  await names(page).first().waitFor();
  await judge("roster");
  await page.getByRole("button", { name: "Make join cards for everyone who has none" }).click();
  await page
    .getByRole("img", { name: /^QR code of the join card of/ })
    .first()
    .waitFor();
  await judge("cards");
  await openView(page, "Benches");
  await judge("benches");
  await page.getByRole("link", { name: "Instructors" }).click();
  await page.getByRole("button", { name: "Invite an instructor" }).click();
  await page.locator("code").waitFor();
  await judge("instructors");
  await page.getByRole("link", { name: "Classes" }).click();
  await page.getByRole("link", { name: "Your password and sign-ins" }).click();
  await page.getByText("this browser").waitFor();
  await judge("own sign-in");
  await page.getByRole("button", { name: "Sign out" }).click();
  await page.getByLabel("Sign-in name").waitFor();
  await judge("sign-in");
});
