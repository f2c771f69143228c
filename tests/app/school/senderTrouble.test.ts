import { expect, test } from "vitest";
import { Sender } from "../../../src/app/school/sender";
import { sendingWords } from "../../../src/app/school/sendingWords";
import type { Logbook } from "../../../src/store/logbook";
import { joinHere } from "../../../src/store/outbox/joinings";
import { ServerStub } from "../../support/classServerStub";
import { anAttempt, JOINED_ADA, NOON, openLogbook } from "../../support/logbookRecords";

const HOUR_MS = 3600 * 1000;

/** A bench of a class whose storage, server and clock do what a test says. */
async function aBench(onPost: (logbook: Logbook) => void = () => undefined) {
  const logbook = await openLogbook();
  await joinHere(logbook, JOINED_ADA);
  await logbook.save({ kind: "attempts", record: anAttempt("a", { personId: "ada" }) });
  const world = { now: NOON, timers: new Set<() => void>() };
  const server = new ServerStub(() => world.now);
  const sender = new Sender({
    logbook,
    post: async (_sentAt, records) => {
      const answer = server.post(records, "fair");
      onPost(logbook);
      return answer;
    },
    postChanges: { edits: async () => ({ kind: "silent" }), deletions: async () => ({ kind: "silent" }) },
    oneTab: async (act) => {
      await act();
      return true;
    },
    now: () => world.now,
    chance: () => 0.5,
    later: (act) => {
      world.timers.add(act);
      return () => world.timers.delete(act);
    },
  });
  return { logbook, server, sender, world };
}

test("a storage that closes while a record is on its way is told, and never as all sent", async () => {
  const { sender, server } = await aBench((logbook) => logbook.close());
  await sender.send();
  expect(server.taken.get("a")).toBe(1);
  expect(sender.state.trouble).toEqual({ kind: "no-storage" });
  expect(sendingWords(sender.state)).not.toMatch(/sent \d|^All sent/);
});

test("a disk that is full when the answer comes keeps the record waiting, and it is sent once more", async () => {
  const { sender, server, logbook, world } = await aBench();
  const full = () => {
    throw new Error("the disk is full");
  };
  logbook.database?.outbox.hook("updating", full);
  await sender.send();
  expect(sender.state).toMatchObject({ waiting: 1, trouble: { kind: "no-storage" } });
  expect(sendingWords(sender.state)).toBe("1 waiting, the storage does not answer");
  expect(world.timers.size, "it tries again").toBe(1);
  logbook.database?.outbox.hook("updating").unsubscribe(full);
  await sender.send();
  expect(server.taken.get("a")).toBe(2);
  expect(sender.state).toMatchObject({ waiting: 0, trouble: null });
});

test("what is held back after a failure is told as waiting, and is tried again whoever asked in between", async () => {
  const { sender, server, world } = await aBench();
  server.poison.add("a");
  await sender.send();
  expect(sendingWords(sender.state)).toBe("1 waiting, the server has trouble");
  world.timers.clear();
  await sender.send();
  expect(sender.state.waiting).toBe(1);
  expect(world.timers.size, "it tries again").toBe(1);
});

test("a clock that is set back an hour holds nothing back for that hour", async () => {
  const { sender, server, world } = await aBench();
  server.poison.add("a");
  await sender.send();
  server.poison.clear();
  world.now -= HOUR_MS;
  await sender.look();
  await sender.send();
  expect(server.taken.get("a")).toBe(1);
  expect(sendingWords(sender.state)).toMatch(/^All sent/);
});
