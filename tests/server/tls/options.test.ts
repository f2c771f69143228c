import { describe, expect, test } from "vitest";
import { readOptions } from "../../../src/server/start/options";
import { ServerError } from "../../../src/server/words/serverError";

const PAIR = { certificate: "a.pem", key: "b.pem" };

describe("which certificate was asked for", () => {
  test.each([
    ["nothing", [], {}, undefined],
    ["own", ["--tls", "own"], {}, "own"],
    ["own before a port", ["--tls", "own", "--port", "1"], {}, "own"],
    ["a pair", ["--tls", "a.pem", "b.pem"], {}, PAIR],
    ["a pair in the middle", ["--host", "x", "--tls", "a.pem", "b.pem", "--port", "1"], {}, PAIR],
    ["a pair with an equals sign", ["--tls=a.pem", "b.pem"], {}, PAIR],
    ["own from the environment", [], { GATEFALL_TLS: "own" }, "own"],
    ["a pair from the environment", [], { GATEFALL_TLS: "a.pem", GATEFALL_TLS_KEY: "b.pem" }, PAIR],
    ["the line before the environment", ["--tls", "own"], { GATEFALL_TLS: "c.pem", GATEFALL_TLS_KEY: "d.pem" }, "own"],
  ])("%s", (_name, args, environment, tls) => {
    const asked = readOptions(args, environment);
    expect(asked).toMatchObject({ kind: "start" });
    expect("options" in asked ? asked.options.tls : "none").toEqual(tls);
  });

  test.each([
    ["a certificate without its key", ["--tls", "a.pem"], {}, "tls-no-key"],
    ["a key from elsewhere", ["--tls", "a.pem"], { GATEFALL_TLS_KEY: "b.pem" }, "tls-no-key"],
    ["a key that does not follow", ["--tls", "a.pem", "--port", "1", "b.pem"], {}, "tls-no-key"],
    ["a word too many", ["--tls", "own", "b.pem"], {}, "no-such-command"],
  ])("%s is refused", (_name, args, environment, code) => {
    expect(() => readOptions(args, environment)).toThrow(ServerError);
    expect(() => readOptions(args, environment)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code }) }),
    );
  });

  test("a command goes with it", () => {
    expect(readOptions(["--tls", "own", "backup", "file"], {})).toMatchObject({
      kind: "command",
      command: { verb: "backup", file: "file" },
      options: { tls: "own" },
    });
  });
});
