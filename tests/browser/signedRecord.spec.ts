import { readFileSync } from "node:fs";
import { expect } from "@playwright/test";
import { keyFingerprint } from "../../src/school/signing/fingerprint";
import { publicKeyOf } from "../../src/school/signing/receipt";
import { aReceipt, KEY } from "../school/aReceipt";
import { violations } from "./axe";
import { test } from "./page";

const SITTING = JSON.parse(readFileSync("tests/fixtures/0.2.0/sitting-passed.json", "utf8"));
const PRINTED = keyFingerprint(publicKeyOf(KEY));

test("a record that a class server signed is checked against the fingerprint that the school printed", async ({
  page,
}) => {
  await page.goto("#/sittings");
  const check = async (file: object) => {
    await page.getByLabel("A saved record").fill(JSON.stringify(file));
    await page.getByRole("button", { name: "Check it" }).click();
  };
  await check(SITTING);
  await expect(page.getByRole("region", { name: "Signature" })).toHaveCount(0);
  const receipt = aReceipt({ record: { kind: "sittings", id: "one", sha256: SITTING.sha256 } });
  await check({ ...SITTING, receipt });
  const signature = page.getByRole("region", { name: "Signature" });
  await expect(signature).toContainText(`Compare the fingerprint ${PRINTED}`);
  const field = signature.getByLabel("Fingerprint of the school’s key");
  await field.fill(PRINTED.toLowerCase().replaceAll("-", ""));
  await expect(signature.getByRole("status")).toContainText("it is that of the key you entered");
  expect(await violations(page)).toEqual([]);
  await field.fill(PRINTED.replace(/^./, (letter) => (letter === "A" ? "B" : "A")));
  await expect(signature.getByRole("alert")).toContainText("none of those that you gave");
  await field.fill("");
  await check({ ...SITTING, receipt: aReceipt() });
  await expect(signature.getByRole("alert")).toContainText("that of another record");
});
