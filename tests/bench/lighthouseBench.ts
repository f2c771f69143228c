import { execFile, execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { cpus, loadavg } from "node:os";
import { promisify } from "node:util";
import { preview } from "vite";
import { BROWSER_SWITCHES, browserPath } from "../browser/browserPath";

/*
 * What Lighthouse says of the built app as `npm start` serves it, on its mobile setting: a slow phone on a slow network, both
 * imitated.
 */

const FOLDER = "test-results/lighthouse";

const PAGES = [
  { name: "start page", hash: "" },
  { name: "bench by its link", hash: "#/bench" },
] as const;

const CATEGORIES = {
  performance: ["performance", 95],
  accessibility: ["accessibility", 100],
  "best-practices": ["best practices", 100],
  seo: ["search engines", 100],
} as const;

const TIMES = {
  "first-contentful-paint": "first paint",
  "largest-contentful-paint": "largest paint",
  "total-blocking-time": "blocked",
  "cumulative-layout-shift": "layout shift",
} as const;

/** What is read of a report. */
interface Report {
  readonly categories: Readonly<Record<string, { readonly score: number | null }>>;
  readonly audits: Readonly<
    Record<string, { readonly score: number | null; readonly displayValue?: string; readonly title: string }>
  >;
}

/** Runs Lighthouse on an address, which this process goes on serving. @throws where it does not run */
async function reportOf(address: string, file: string): Promise<Report> {
  const flags = ["--headless", ...BROWSER_SWITCHES].join(" ");
  const asked = [
    address,
    "--quiet",
    "--no-enable-error-reporting",
    "--output=json",
    `--output-path=${file}`,
    `--chrome-flags=${flags}`,
  ];
  await promisify(execFile)("npx", ["lighthouse", ...asked], {
    env: { ...process.env, CHROME_PATH: browserPath() },
  });
  return JSON.parse(readFileSync(file, "utf8")) as Report;
}

const load = () => `${loadavg()[0]?.toFixed(1)} on ${cpus().length} processors`;
const say = (...lines: readonly string[]) => process.stdout.write(`${lines.join("\n")}\n`);

/** Rows for the categories, then what is wrong where one falls short. */
function rowsOf(name: string, { categories, audits }: Report): string[] {
  const scores = Object.entries(CATEGORIES).map(([id, [title, target]]) => {
    const score = Math.round(100 * (categories[id]?.score ?? 0));
    return `| ${name}: ${title} | ${score} | ${target} | ${score >= target ? "met" : "missed"} |`;
  });
  const times = Object.entries(TIMES).map(
    ([id, title]) => `| ${name}: ${title} | ${audits[id]?.displayValue ?? "?"} | | |`,
  );
  return [...scores, ...times];
}

mkdirSync(FOLDER, { recursive: true });
const server = await preview({ preview: { port: 0, host: "127.0.0.1" }, logLevel: "error" });
const { port } = server.httpServer.address() as AddressInfo;
try {
  say(`Lighthouse, mobile setting, ${execFileSync(browserPath() ?? "", ["--version"], { encoding: "utf8" }).trim()}`);
  say("", "| what | measured | target | |", "|---|---:|---:|---|");
  for (const { name, hash } of PAGES) {
    const before = load();
    const report = await reportOf(`http://127.0.0.1:${port}/${hash}`, `${FOLDER}/${name.replaceAll(" ", "-")}.json`);
    say(...rowsOf(name, report), `| ${name}: load of the machine before and after | ${before}, ${load()} | | |`);
  }
} finally {
  await server.close();
}
