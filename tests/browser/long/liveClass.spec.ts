import type { Page } from "@playwright/test";
import { startPostgres } from "../../server/support/postgresServer";
import { expect, inFolder, startClass, test } from "../classServer";
import { classLine, expectLateAndSigned, joinedBench, liveClass, openClass, sending } from "../liveClass";
import { dialLast } from "../sittingByKeys";
import { storedRows } from "../storedRows";

// Servers, databases and browsers of their own.
test.setTimeout(300_000);

test("an instructor and three benches, on PostgreSQL", async ({ page, browser }) => {
  const postgres = await startPostgres();
  try {
    await inFolder(async (data) => {
      const server = await startClass(data, "--database", await postgres.newDatabase("school"));
      try {
        expectLateAndSigned(await liveClass(page, browser, server));
      } finally {
        await server.end("SIGTERM");
      }
    });
  } finally {
    await postgres.remove();
  }
});

const ROUNDS = 5;

/** Attempts that ended, as the bench has them. */
const endedHere = async (bench: Page) => (await storedRows(bench, "attempts")).filter(({ opened }) => opened === true);

/** Ids of the attempts that the server has of everybody, as often as it has them. */
async function attemptsAt(instructor: Page): Promise<string[]> {
  const get = async (path: string) => (await instructor.request.get(new URL(path, instructor.url()).href)).json();
  const { classes } = await get("/api/classes");
  const { people } = await get(`/api/classes/${classes[0].id}/people`);
  const file = await get(`/api/people/${people[0].id}/export/logbook`);
  return file.attempts.map(({ id }: { id: string }) => id);
}

test("a server that is killed while a bench sends has every record once, when it is back", async ({ browser }) => {
  await inFolder(async (data) => {
    const instructor = await (await browser.newContext()).newPage();
    let server = await startClass(data);
    const { port } = new URL(server.address);
    try {
      const code = await openClass(instructor, server);
      const bench = await joinedBench(browser, server.address, code, "Ada");
      await bench.goto(`${server.address}#/bench?seed=5`);
      await expect(classLine(bench).getByRole("button", { name: "Ask for help" })).toBeVisible();
      for (let round = 0; round < ROUNDS; round++) {
        // At other moments of what the end of an attempt sends: before it, in it, after it.
        const killed = (async () => {
          await expect.poll(async () => (await endedHere(bench)).length, { timeout: 60_000 }).toBeGreaterThan(round);
          await bench.waitForTimeout(120 * round);
          await server.end("SIGKILL");
        })();
        await dialLast(bench);
        await killed;
        await bench.getByRole("button", { name: /^Again/ }).click();
        server = await startClass(data, "--port", port);
      }
      await dialLast(bench);
      // By itself: nobody presses anything.
      await expect(sending(bench)).toHaveText(/^All sent/, { timeout: 120_000 });
      const own = (await endedHere(bench)).map(({ id }) => String(id));
      expect(own).toHaveLength(ROUNDS + 1);
      expect((await attemptsAt(instructor)).toSorted()).toEqual(own.toSorted());
    } finally {
      await server.end("SIGTERM");
    }
  });
});
