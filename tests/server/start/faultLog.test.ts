import { expect, test } from "vitest";
import { classServer } from "../../../src/server/start/classServer";
import { ENGINES } from "../support/engines";
import { testServer } from "../support/testSchool";

test("a fault of the server is in its log, without what was sent and without what a database tells of rows", async () => {
  const database = await ENGINES[0].open();
  const { server: unused, world } = await testServer(database);
  const lines: string[] = [];
  const fault = Object.assign(new Error("the clock has stopped"), { detail: "Failing row contains (a hash)" });
  const now = () => {
    throw fault;
  };
  const server = await classServer({ ...world, now }, { log: { write: (line) => lines.push(line) } });
  const payload = { login: "orla", password: "four plain words here" };
  const cookies = { gatefall_instructor: "a-secret" };
  const answer = await server.inject({ method: "POST", url: "/api/sign-in", payload, cookies });
  expect([answer.statusCode, answer.json().problem.code]).toEqual([500, "server-failed"]);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toContain("the clock has stopped");
  for (const secret of [payload.password, cookies.gatefall_instructor, fault.detail]) {
    expect(lines[0]).not.toContain(secret);
  }
  // What somebody asks wrongly is no fault of the server.
  await server.inject({ method: "POST", url: "/api/sign-in", payload: {} });
  expect(lines).toHaveLength(1);
  await server.close();
  await unused.close();
  await database.remove();
});
