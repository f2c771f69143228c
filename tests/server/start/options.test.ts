import { describe, expect, test } from "vitest";
import { HELP, readOptions, type StartOptions } from "../../../src/server/start/options";

const USUAL: StartOptions = {
  data: "class-data",
  database: undefined,
  host: "0.0.0.0",
  port: 8080,
  isBehindProxy: false,
  tls: undefined,
  app: undefined,
};
const ADDRESS = "postgres://u:p@db:5432/school";

const optionsOf = (args: readonly string[], environment: Readonly<Record<string, string>> = {}) => {
  const asked = readOptions(args, environment);
  return "options" in asked ? asked.options : null;
};

/** Each option as it is written on the line and in the environment, and what it sets. */
const WRITTEN: readonly (readonly [
  line: readonly string[],
  name: string,
  value: string,
  sets: Partial<StartOptions>,
])[] = [
  [["--data", "d"], "GATEFALL_DATA", "d", { data: "d" }],
  [["--database", ADDRESS], "GATEFALL_DATABASE", ADDRESS, { database: ADDRESS }],
  [["--host", "::1"], "GATEFALL_HOST", "::1", { host: "::1" }],
  [["--port", "443"], "GATEFALL_PORT", "443", { port: 443 }],
  [["--behind-proxy"], "GATEFALL_BEHIND_PROXY", "1", { isBehindProxy: true }],
  [["--tls", "own"], "GATEFALL_TLS", "own", { tls: "own" }],
  [["--app", "dist"], "GATEFALL_APP", "dist", { app: "dist" }],
];

describe("how a class server is to be started", () => {
  test("nothing said is the usual", () => {
    expect(optionsOf([])).toEqual(USUAL);
  });

  test.each(WRITTEN)("%s is %s=%s in the environment", (line, name, value, sets) => {
    expect(optionsOf(line)).toEqual({ ...USUAL, ...sets });
    expect(optionsOf([], { [name]: value })).toEqual({ ...USUAL, ...sets });
    expect(optionsOf([], { [name]: "" }), "set to nothing is not set").toEqual(USUAL);
  });

  test("the line goes before the environment", () => {
    expect(optionsOf(["--port", "1"], { GATEFALL_PORT: "2" })).toMatchObject({ port: 1 });
  });

  test("every option is in the help, and every one in the help is tried here", () => {
    const inHelp = new Set([...HELP.matchAll(/^ {2}--([a-z-]+)/gm)].map(([, option]) => option));
    expect([...inHelp].toSorted()).toEqual([...WRITTEN.map(([[option = ""]]) => option.slice(2)), "demo"].toSorted());
  });

  test.each([
    ["a port that is none", ["--port", "70000"], "no-port"],
    ["an option that there is not", ["--dta", "d"], "unknown-option"],
    ["a command that there is not", ["repair"], "no-such-command"],
    ["a backup to nowhere", ["backup"], "no-such-command"],
    ["a check of a file", ["check", "file"], "no-such-command"],
    ["a new school with a name", ["new-school", "Vale"], "no-such-command"],
  ])("%s is refused", (_name, args, code) => {
    expect(() => readOptions(args, {})).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code }) }),
    );
  });

  test.each([
    [["check"], { verb: "check" }],
    [["new-school"], { verb: "new-school" }],
    [["new-password", "orla"], { verb: "new-password", login: "orla" }],
    [["backup", "f"], { verb: "backup", file: "f" }],
    [["restore", "f"], { verb: "restore", file: "f" }],
  ])("%s is a command, on the data that the options name", (args, command) => {
    const options = { ...USUAL, data: "d" };
    expect(readOptions([...args, "--data", "d"], {})).toEqual({ kind: "command", command, options });
  });
});
