import { writeLogbookFile } from "../../src/records/file/logbookFile";
import { anAttempt, contents, NOON, theirPeople } from "../support/logbookRecords";
import { expect, test } from "./page";
import { storedRows } from "./storedRows";

test("a logbook file with bad records is imported: each is named, the others are there with their person", async ({
  page,
}) => {
  const whole = JSON.parse(writeLogbookFile(contents(theirPeople, [anAttempt("good")]), NOON));
  const attempts = [
    ...whole.attempts,
    { ...anAttempt("bad"), opened: 1 },
    { ...anAttempt("orphan"), personId: "nobody-here" },
  ];
  await page.goto("#/logbook?view=files");
  await page.locator("input[type=file]").setInputFiles({
    name: "class.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify({ ...whole, attempts })),
  });
  const remarks = page.getByRole("region", { name: "What was wrong in the file" });
  await expect(remarks.getByRole("listitem")).toHaveText([
    /^attempts\[1\] \(id bad\) is left out: opened must be true or false, not 1\.$/,
    /nobody-here/,
  ]);
  await expect(remarks.getByRole("status")).toContainText("Everything else was imported");
  await expect
    .poll(async () => (await storedRows(page, "attempts")).map(({ id }) => id).sort())
    .toEqual(["good", "orphan"]);
  await page.getByRole("link", { name: "Attempts" }).click();
  await page
    .getByRole("group", { name: "Who practices" })
    .getByRole("button", { name: /^Unknown person/ })
    .click();
  await expect(page.getByRole("button", { name: /^Replay the attempt of/ })).toHaveCount(1);
});
