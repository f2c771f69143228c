import { BROWSER_SWITCHES, browserPath } from "./browserPath";
import { expect, test } from "./page";
import { serveBuilt } from "./staticServer";

// A name that is not this machine's own, so that the page is one that others can open.
test.use({
  launchOptions: {
    executablePath: browserPath() ?? "",
    args: [...BROWSER_SWITCHES, "--host-resolver-rules=MAP drills.example 127.0.0.1"],
  },
});

test("a sheet of a page that others can open prints with its code, on one page", async ({ page }) => {
  const server = await serveBuilt();
  try {
    const address = new URL(server.address);
    address.hostname = "drills.example";
    await page.goto(`${address}#/sheets?sample=11`);
    await page.getByRole("button", { name: "Link and QR code" }).click();
    await expect(page.getByRole("dialog")).toBeVisible();
    await expect(page.getByRole("note")).toHaveCount(0);
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await page.emulateMedia({ media: "print" });
    await expect(page.getByRole("img", { name: /^QR code/ })).toBeVisible();
    const printed = (await page.pdf({ format: "A4" })).toString("latin1");
    expect(printed.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  } finally {
    await server.close();
  }
});
