import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { dialingStation, testSheet } from "../support/testSheet";
import { expectGoodInEveryLook } from "./axe";
import { expect, makeClass, openView, setUpSchool, test } from "./classServer";
import { Shots } from "./shots";
import { dialLast, startHere, verdict } from "./sittingByKeys";

// A server of its own comes first, and a sitting is sat.
test.setTimeout(240_000);

const SHEET = testSheet({
  title: "Friday test",
  stations: [dialingStation({ repetitions: 1, passMarks: { firstTime: 1 } })],
  sitting: { pauseAllowed: false, onReload: "resume", clockHideable: false },
});

/** The instructor makes a class with two people and sets it the sheet. @returns the class code */
async function setSheet(page: Page): Promise<string> {
  await makeClass(page, "Fitters 1");
  await page.getByRole("button", { name: "New code" }).click();
  const code = page.locator(".class-code b");
  await expect(code).toHaveText(/^\w{4}-\w{4}$/);
  const text = (await code.textContent()) ?? "";
  await openView(page, "Roster and cards");
  for (const name of ["Ada", "Bo"]) {
    await page.getByLabel("Name to add").fill(name);
    await page.keyboard.press("Enter");
    await expect(page.getByRole("rowheader", { name })).toBeVisible();
  }
  await openView(page, "Assignments");
  await page.getByRole("link", { name: "Assign a sheet" }).click();
  const buffer = Buffer.from(JSON.stringify(SHEET));
  await page.locator("input[type=file]").setInputFiles({ name: "f.json", mimeType: "application/json", buffer });
  await expect(page.getByText("fingerprint")).toBeVisible();
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  await expect(page.getByText("Friday test is assigned.")).toBeVisible();
  return text;
}

/** Ada joins at a bench, and sits what is due. */
async function sitAt(bench: Page, code: string): Promise<void> {
  await bench.getByRole("link", { name: "Join a class" }).click();
  await bench.getByLabel("Class code").fill(code);
  await bench.getByLabel("Your name").fill("Ada");
  await bench.keyboard.press("Enter");
  await expect(bench.getByRole("heading", { name: "You joined the class" })).toBeVisible();
  await bench.getByRole("link", { name: "Go to the start page" }).click();
  await bench.getByRole("button", { name: "Begin Friday test" }).click();
  await startHere(bench);
  await dialLast(bench);
  await expect(verdict(bench)).toBeVisible();
  await expect(bench.getByText(/^This sitting was sent to your class at/)).toBeVisible({ timeout: 30_000 });
}

test("from the first link to a signed record that the check page takes, and a comment that is read", async ({
  page,
  browser,
  classServer,
}) => {
  const shots = new Shots(page, "class");
  await setUpSchool(page, classServer);
  const code = await setSheet(page);
  await openView(page, "Results");
  await expect(page.getByRole("row", { name: /^Ada not begun/ })).toBeVisible();

  const elsewhere = await browser.newContext({ baseURL: classServer.address });
  const bench = await elsewhere.newPage();
  await bench.goto("#/start");
  await expect(bench.getByRole("link", { name: "For instructors" })).toHaveAttribute("href", "#/instructor");
  await sitAt(bench, code);

  await page.reload();
  const result = page.getByRole("link", { name: /^Passed, 100 % right ?, Ada, Friday test/ });
  await expect(result).toBeVisible();
  await expectGoodInEveryLook(page, "results");
  await shots.take("results");
  await result.click();
  await expect(page.getByText("Ada. Friday test. Attempt 1")).toBeVisible();
  await expect(page.getByText("By the server’s own marks: Passed, 100 % right.")).toBeVisible();
  await page.getByRole("button", { name: "Replay try 1" }).click();
  await expect(page.getByRole("region", { name: "Tries" }).locator(".turn-chart")).toBeVisible();
  await page.getByLabel("New comment").fill("Good hands. Slow down before the last number.");
  await page.getByRole("button", { name: "Leave the comment" }).click();
  await expect(page.getByRole("listitem").filter({ hasText: "Good hands." })).toContainText("not read yet");
  await expectGoodInEveryLook(page, "sitting");
  await shots.take("sitting");
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the signed record" }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^friday-test-Ada-.*-signed\.json$/);
  const text = await readFile(await file.path(), "utf8");

  const key = JSON.parse(text).receipt.statement.key;
  await page.getByRole("link", { name: "Print the school’s key" }).click();
  const prints = page.getByRole("list", { name: "Fingerprints" }).getByRole("listitem");
  await expect(prints).toHaveCount(1);
  await expect(prints).toContainText(key);
  await expect(page.getByText("It does not prove who turned the dial")).toBeVisible();
  await page.getByRole("button", { name: "Make a new key" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Make a new key" }).click();
  await expect(page.getByText("The new key is made.")).toBeVisible();
  await expect(prints).toHaveCount(2);
  await expect(prints.first()).toContainText("signs since");
  await expect(prints.last()).toContainText(key);
  await expectGoodInEveryLook(page, "signing keys");
  await shots.take("keys");
  await page.goBack();

  await page.getByRole("link", { name: "All results" }).click();
  await page.getByRole("link", { name: "Friday test: each question and station" }).click();
  await expect(page.getByText("100 % right of 1 person")).toBeVisible();
  await expectGoodInEveryLook(page, "what was hard");
  await shots.take("difficulty");

  // Anyone checks it, anywhere, by the printed key.
  const away = await browser.newContext();
  const checker = await away.newPage();
  await checker.goto("#/sittings");
  await checker.getByLabel("A saved record").fill(text);
  await checker.getByRole("button", { name: "Check it" }).click();
  await expect(checker.getByText(/^The record is sound\./)).toBeVisible();
  const signature = checker.getByRole("region", { name: "Signature" });
  await signature.getByLabel("Fingerprint of the school’s key").fill(key);
  await expect(signature.getByRole("status")).toContainText("it is that of the key you entered");
  await away.close();

  await bench.goto("#/start");
  await bench.getByRole("button", { name: "Read 1 new comment" }).click();
  await expect(bench.getByRole("list", { name: "Comments" })).toContainText("Good hands.");
  await elsewhere.close();
});
