import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { Page } from "@playwright/test";
import { layEmptyDatabase } from "../server/support/emptyDatabase";
import { test as base, expect } from "./page";

const ROOT = join(import.meta.dirname, "../..");

/** A class server with the built app. */
export interface RunningServer {
  /** Address of its page, with a slash at the end. */
  readonly address: string;
  /** Hash of the link that makes the first school; empty where there is a school. */
  readonly firstLink: string;
}

/** One that a test can end. */
export interface StartedServer extends RunningServer {
  readonly end: (signal: "SIGTERM" | "SIGKILL") => Promise<void>;
}

/** What it prints once it listens. */
async function greeting(server: ChildProcess): Promise<RunningServer> {
  if (server.stdout === null) throw new Error("the server has no output");
  let address = "";
  for await (const line of createInterface(server.stdout)) {
    address = /^This machine: (\S+)/.exec(line)?.[1] ?? address;
    const firstLink = /^First instructor.*(#\/instructor\/first\S+)/.exec(line)?.[1];
    if (firstLink !== undefined) return { address, firstLink };
    if (line === "Stop with Ctrl+C.") return { address, firstLink: "" };
  }
  throw new Error("the server ended before it said where it listens");
}

/** Starts a class server. @param data - its folder @param more - further options, such as "--port", "4000" */
export async function startClass(data: string, ...more: readonly string[]): Promise<StartedServer> {
  const port = more.includes("--port") ? [] : ["--port", "0"];
  const args = ["src/server/main.ts", "--app", "dist", "--host", "127.0.0.1", "--data", data, ...port, ...more];
  const server = spawn(process.execPath, ["--import", "tsx", ...args], {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "inherit"],
  });
  return {
    ...(await greeting(server)),
    async end(signal) {
      const hasEnded = once(server, "exit");
      server.kill(signal);
      await hasEnded;
    },
  };
}

/** Does something with a folder that is gone afterwards. */
export async function inFolder(act: (folder: string) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "gatefall-class-"));
  try {
    await act(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** A test with a class server of its own. */
export const test = base.extend<{ readonly classServer: RunningServer }>({
  // biome-ignore lint/correctness/noEmptyPattern: how a fixture says that it needs no other
  classServer: async ({}, use) => {
    await inFolder(async (data) => {
      await layEmptyDatabase(data);
      const server = await startClass(data);
      try {
        await use(server);
      } finally {
        await server.end("SIGTERM");
      }
    });
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
  await expect(page.getByRole("heading", { name, level: 1 })).toBeFocused();
}

export { expect };

/** Opens a view of the class whose page an instructor has. @param name - on its tab */
export const openView = (page: Page, name: string): Promise<void> =>
  page.getByRole("navigation", { name: "Views of the class" }).getByRole("link", { name, exact: true }).click();
