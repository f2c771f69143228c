import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { Page } from "@playwright/test";
import { test as base, expect } from "./page";

const ROOT = join(import.meta.dirname, "../..");

/** A class server with the built app, on a folder that is gone afterwards. */
export interface RunningServer {
  /** Address of its page, with a slash at the end. */
  readonly address: string;
  /** Hash of the link that makes the first school. */
  readonly firstLink: string;
}

/** What it prints once it listens. */
async function greeting(server: ChildProcess): Promise<RunningServer> {
  if (server.stdout === null) throw new Error("the server has no output");
  let address = "";
  for await (const line of createInterface(server.stdout)) {
    address = /^This machine: (\S+)/.exec(line)?.[1] ?? address;
    const firstLink = /^First instructor.*(#\/instructor\/first\S+)/.exec(line)?.[1];
    if (firstLink !== undefined) return { address, firstLink };
  }
  throw new Error("the server ended without a link");
}

/** A test with a class server of its own. */
export const test = base.extend<{ readonly classServer: RunningServer }>({
  // biome-ignore lint/correctness/noEmptyPattern: how a fixture says that it needs no other
  classServer: async ({}, use) => {
    const data = await mkdtemp(join(tmpdir(), "gatefall-class-"));
    const args = ["src/server/main.ts", "--app", "dist", "--host", "127.0.0.1", "--port", "0", "--data", data];
    const server = spawn(process.execPath, ["--import", "tsx", ...args], {
      cwd: ROOT,
      stdio: ["ignore", "pipe", "inherit"],
    });
    try {
      await use(await greeting(server));
    } finally {
      const hasEnded = once(server, "exit");
      server.kill("SIGTERM");
      await hasEnded;
      await rm(data, { recursive: true, force: true });
    }
  },
});

/** The first instructor sets up the school, by the link that the server printed. */
export async function setUpSchool(page: Page, { address, firstLink }: RunningServer): Promise<void> {
  await page.goto(`${address}${firstLink}`);
  await expect(page.getByRole("heading", { name: "Set up your school" })).toBeVisible();
  await page.getByLabel("School").fill("Millbrook Trades");
  await page.getByLabel("Your name").fill("Orla Finch");
  await page.getByLabel("Sign-in name").fill("orla");
  await page.getByLabel("Password").fill("four plain words here");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Classes" })).toBeVisible();
}

/** Makes a class, and opens it. */
export async function makeClass(page: Page, name: string): Promise<void> {
  await page.getByLabel("Name of a new class").fill(name);
  await page.keyboard.press("Enter");
  await page.getByRole("link", { name }).click();
  await expect(page.getByRole("heading", { name, level: 1 })).toBeVisible();
}

export { expect };
