import { describe, expect, test } from "vitest";
import { ENGINES } from "./support/engines";
import { fuzz } from "./weather/requestFuzz";

const RUNS = 500;

describe.each(ENGINES)("requests of any kind to a server on $engine", ({ open }) => {
  test("no answer is a fault of the server, and nothing is stored that the schemas refuse", async () => {
    const database = await open();
    const { statuses, stored, problems } = await fuzz(database, RUNS, 11);
    expect(problems).toEqual([]);
    // It got through to what is behind the guard.
    expect(statuses[200]).toBeGreaterThan(RUNS / 20);
    expect(statuses[400]).toBeGreaterThan(RUNS / 20);
    expect(stored).toBeGreaterThan(5);
    await database.remove();
  });
});
