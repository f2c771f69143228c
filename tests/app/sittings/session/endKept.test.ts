import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Logbook } from "../../../../src/store/logbook";
import { storageError } from "../../../../src/store/storageProblem";
import { emptyHost, NOON } from "../../../support/logbookRecords";
import { satRecord } from "../../../support/satRecord";

let kept: typeof import("../../../../src/app/sittings/session/sittingKeeping");
let keeping: typeof import("../../../../src/app/keeping/keeping")["keeping"];
let logbook: Logbook;

beforeAll(async () => {
  for (const [name, value] of Object.entries(emptyHost())) vi.stubGlobal(name, value);
  // A page opens its logbook once: this one has a page of its own.
  vi.resetModules();
  kept = await import("../../../../src/app/sittings/session/sittingKeeping");
  ({ keeping } = await import("../../../../src/app/keeping/keeping"));
  const { currentLogbook } = await import("../../../../src/app/keeping/currentLogbook");
  ({ logbook } = await currentLogbook());
});
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

test("a sitting that has ended is stored though the storage did not say whether it was there", async () => {
  const end = { id: "s1", record: satRecord(), sha256: "a".repeat(64) };
  const fails = vi.spyOn(logbook, "read").mockRejectedValueOnce(storageError("storage-failed", []));
  new kept.SittingKeeping({ id: "s1", personId: null }).noteEnd(end, NOON);
  await keeping.add(async () => undefined);
  expect(fails).toHaveBeenCalled();
  expect(await logbook.database?.sittings.get("s1")).toMatchObject({ state: "finished" });
});
