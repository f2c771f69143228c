import { expect, test, vi } from "vitest";
import { Logbook } from "../../src/store/logbook";
import { type DatabaseHost, LogbookDatabase } from "../../src/store/logbookDatabase";
import { recordsOfKind } from "../../src/store/wholeLogbook";
import { aPerson, emptyHost } from "../support/logbookRecords";

/* A database that never answers: the request is made, and nothing comes of it. */

const person = (id: string) => ({ kind: "people" as const, record: aPerson(id) });

/** A host whose requests to open are answered only once they are let go. */
function slowHost(): { readonly host: DatabaseHost; readonly letGo: () => void } {
  const host = emptyHost();
  const open = host.indexedDB.open.bind(host.indexedDB);
  const held: (() => void)[] = [];
  let isHeld = true;
  host.indexedDB.open = (name, version) => {
    if (!isHeld) return open(name, version);
    const silent = { onsuccess: null, onerror: null, onupgradeneeded: null } as unknown as IDBOpenDBRequest;
    held.push(() => {
      const real = open(name, version);
      real.onupgradeneeded = (event) => {
        Object.defineProperty(silent, "transaction", { value: real.transaction });
        silent.onupgradeneeded?.call(silent, event);
      };
      real.onsuccess = (event) => {
        Object.defineProperty(silent, "result", { value: real.result });
        silent.onsuccess?.call(silent, event);
      };
      real.onerror = (event) => {
        Object.defineProperty(silent, "error", { value: real.error });
        silent.onerror?.call(silent, event);
      };
    });
    return silent;
  };
  const letGo = () => {
    isHeld = false;
    for (const answer of held) answer();
  };
  return { host, letGo };
}

test("opening says so after a while; records wait, and are stored when it answers after all", async () => {
  const { host, letGo } = slowHost();
  const onChange = vi.fn();
  const logbook = new Logbook(new LogbookDatabase("test", host), { onChange, patience_ms: 20 });
  await logbook.open();
  expect(logbook.problem).toMatchObject({ code: "no-answer", message: expect.stringContaining("does not answer") });
  expect(await logbook.save(person("tavro"))).toMatchObject({ isStored: false, problem: { code: "no-answer" } });
  expect(await recordsOfKind(logbook, "people")).toMatchObject([{ id: "tavro" }]);
  letGo();
  await vi.waitFor(() => expect([logbook.pending, logbook.problem]).toEqual([[], null]));
  expect(await logbook.database?.people.count()).toBe(1);
  expect(onChange).toHaveBeenCalled();
});

test("a write that hangs is said, does not hold up the next one, and counts as stored when it comes through", async () => {
  const host = emptyHost();
  const logbook = new Logbook(new LogbookDatabase("test", host), { patience_ms: 400 });
  await logbook.open();
  let end = () => {};
  const holding = logbook.change(
    async (database) =>
      new Promise<void>((resolve) => {
        const hold = { isOver: false };
        end = () => {
          hold.isOver = true;
        };
        // A transaction lives as long as it has requests.
        const goOn = (): unknown => (hold.isOver ? resolve() : database.people.count().then(goOn));
        goOn();
      }),
  );
  expect(await logbook.save(person("tavro"))).toMatchObject({ isStored: false, problem: { code: "no-answer" } });
  expect(await logbook.save(person("mibsy"))).toMatchObject({ isStored: false });
  end();
  await holding;
  await vi.waitFor(() => expect([logbook.pending, logbook.problem]).toEqual([[], null]));
  expect(await logbook.database?.people.count()).toBe(2);
});
