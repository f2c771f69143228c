import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Asking, asking, benchCookies, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { type TestServer, testSchool, testServer } from "../support/testSchool";

const HOUR_MS = 3600 * 1000;

/** A card as it is made. */
interface Card {
  readonly token: string;
  readonly code: string;
}

describe.each(ENGINES)("on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  let anyone: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
    anyone = asking(school);
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const join = (from: Asking, code: string, name: string, more: object = {}) =>
    from.post("/api/join", { code, name, bench: "Bench 1", ...more });
  const people = async (classId: string) => (await head.get(`/api/classes/${classId}/people`)).json().people;

  test("a new name makes a person who is marked, and the bench knows its class", async () => {
    const { classId, code } = await testClass(head, "Monday");
    const answer = await join(anyone, code, "  Ada   Hill ");
    expect(answer.json()).toMatchObject({
      school: { name: "hill" },
      class: { id: classId, name: "Monday" },
      person: { name: "Ada Hill" },
      people: [{ name: "Ada Hill" }],
      now: school.world.now(),
    });
    const bench = asking(school, benchCookies(answer));
    expect((await bench.get("/api/bench")).json()).toEqual(answer.json());
    expect(await people(classId)).toMatchObject([{ name: "Ada Hill", isByCode: true, hasPin: false }]);
  });

  test("a name on the roster is that person, however it is typed, on every bench", async () => {
    const { classId, code } = await testClass(head);
    const { id } = (await head.post(`/api/classes/${classId}/people`, { name: "Ｆinn Straße" })).json();
    for (const typed of ["finn straße", " FINN  STRASSE", "Finn Straße"]) {
      expect((await join(anyone, code.toLowerCase().replace("-", " "), typed)).json().person).toMatchObject({ id });
    }
    expect(await people(classId)).toHaveLength(1);
    expect((await head.get(`/api/classes/${classId}/devices`)).json().devices).toHaveLength(3);
  });

  test("two who join under one new name at once are one person", async () => {
    const { classId, code } = await testClass(head);
    const answers = await Promise.all(["Bo", "BO", "bo "].map((name) => join(anyone, code, name)));
    expect(new Set(answers.map((one) => one.json().person.id)).size).toBe(1);
    expect(await people(classId)).toHaveLength(1);
  });

  test("a bench keeps its identity when another person joins there; one of them leaves", async () => {
    const { code } = await testClass(head);
    const first = await join(anyone, code, "Cy");
    const bench = asking(school, benchCookies(first));
    const second = await join(bench, code, "Di");
    expect(second.json().deviceId).toBe(first.json().deviceId);
    expect(second.json()).toMatchObject({ person: { name: "Di" } });
    expect(
      second
        .json()
        .people.map(({ name }: { name: string }) => name)
        .toSorted(),
    ).toEqual(["Cy", "Di"]);
    const { id } = second.json().person;
    expect(outcome(await bench.post("/api/bench/leave", { personId: id }))).toBe("204");
    expect((await bench.get("/api/bench")).json()).toMatchObject({ people: [{ name: "Cy" }] });
    expect(outcome(await bench.post("/api/bench/leave", { personId: id }))).toBe("404 no-such-thing");
    expect(outcome(await bench.post("/api/bench/leave", { personId: first.json().person.id }))).toBe("204");
    expect(outcome(await bench.get("/api/bench"))).toBe("409 nobody-joined");
    expect((await join(bench, code, "Cy")).json().deviceId).toBe(first.json().deviceId);
    expect(outcome(await bench.post("/api/bench/leave", {}))).toBe("204");
    expect(outcome(await bench.get("/api/bench"))).toBe("401 not-signed-in");
  });

  test("a bench that asks hears of another name, a lost card and the end of its class", async () => {
    const { classId, code } = await testClass(head);
    const answer = await join(anyone, code, "Nan");
    const bench = asking(school, benchCookies(answer));
    const { id } = answer.json().person;
    expect((await bench.get("/api/bench")).json()).toMatchObject({ people: [{ id, name: "Nan" }], classEndedAt: null });
    const cards = () => head.post(`/api/classes/${classId}/cards`, { personIds: [id] });
    await cards();
    expect((await bench.get("/api/bench")).json().people[0]).not.toHaveProperty("cardLostAt");
    school.pass(1000);
    await cards();
    const { version } = (await people(classId))[0];
    await head.post(`/api/people/${id}`, { version, name: "Nan Vale" });
    await head.post(`/api/classes/${classId}/end`);
    expect((await bench.get("/api/bench")).json()).toMatchObject({
      people: [{ id, name: "Nan Vale", cardLostAt: school.world.now() }],
      classEndedAt: school.world.now(),
    });
  });

  test("a bench moves to another class of its school, and is another bench in another school", async () => {
    const other = asking(school, await testSchool(school, "vale"));
    const [here, there, elsewhere] = [await testClass(head), await testClass(head), await testClass(other)];
    const first = await join(anyone, here.code, "Eve");
    const bench = asking(school, benchCookies(first));
    const moved = await join(bench, there.code, "Eve");
    expect(moved.json()).toMatchObject({ deviceId: first.json().deviceId, class: { id: there.classId } });
    const away = await join(bench, elsewhere.code, "Eve");
    expect(away.json().deviceId).not.toBe(first.json().deviceId);
    expect((await asking(school, benchCookies(away)).get("/api/bench")).json().school.name).toBe("vale");
  });

  test("a PIN is set when one joins first, and needed from then on", async () => {
    const { classId, code } = await testClass(head);
    const { id } = (await head.post(`/api/classes/${classId}/people`, { name: "Fay" })).json();
    expect(outcome(await join(anyone, code, "Fay", { pin: "1234" }))).toBe("200");
    expect(outcome(await join(anyone, code, "Fay"))).toBe("403 wrong-pin");
    expect(outcome(await join(anyone, code, "Fay", { pin: "4321" }))).toBe("403 wrong-pin");
    expect(outcome(await join(anyone, code, "Fay", { pin: "1234" }))).toBe("200");
    const [{ version, hasPin }] = await people(classId);
    expect(hasPin).toBe(true);
    expect(outcome(await head.post(`/api/people/${id}`, { version, noPin: true }))).toBe("204");
    expect(outcome(await join(anyone, code, "Fay", { pin: "9999" }))).toBe("200");
    expect(outcome(await join(anyone, code, "Fay", { pin: "1234" }))).toBe("403 wrong-pin");
    const stored = await database.query.selectFrom("people").select("pin_hash").where("id", "=", id).execute();
    expect(stored[0]?.pin_hash).toMatch(/^scrypt\$/);
  });

  test("codes that do not do are all answered alike; several live at once", async () => {
    const { classId, code } = await testClass(head);
    const second = (await head.post(`/api/classes/${classId}/codes`, { hours: 1 })).json().code;
    const revoked = (await head.post(`/api/classes/${classId}/codes`, {})).json().code;
    expect(new Set([code, second, revoked]).size).toBe(3);
    expect(outcome(await head.post(`/api/classes/${classId}/codes/revoke`, { code: revoked }))).toBe("204");
    expect((await head.get(`/api/classes/${classId}/codes`)).json().codes).toHaveLength(2);
    expect(outcome(await join(anyone, second, "Gus"))).toBe("200");
    school.pass(HOUR_MS);
    const wrong = [revoked, second, "XXXX-XXXX", "0000-0000", "x", "' or 1=1"];
    const answers = await Promise.all(wrong.map((one) => join(anyone, one, "Gus")));
    expect(new Set(answers.map(({ statusCode, body }) => `${statusCode} ${body}`)).size).toBe(1);
    expect(outcome(answers[0] as (typeof answers)[0])).toBe("410 code-not-valid");
    expect(outcome(await join(anyone, code, "Gus"))).toBe("200");
    expect(outcome(await head.post(`/api/classes/${classId}/end`))).toBe("204");
    expect(outcome(await join(anyone, code, "Gus"))).toBe("410 code-not-valid");
    expect(outcome(await head.post(`/api/classes/${classId}/codes`, {}))).toBe("409 class-ended");
    expect(outcome(await head.post(`/api/classes/${classId}/end`))).toBe("409 class-ended");
  });

  test("a card lets its person in until it is replaced, lost, or the person leaves", async () => {
    const { classId } = await testClass(head);
    const add = async (name: string) => (await head.post(`/api/classes/${classId}/people`, { name })).json().id;
    const [hal, ida] = [await add("Hal"), await add("Ida")];
    const make = async (body: object) => (await head.post(`/api/classes/${classId}/cards`, body)).json().cards;
    const byCard = (token: string) => anyone.post("/api/join/card", { token, bench: "Bench" });
    const [first, second] = await make({});
    expect([first.personId, second.personId]).toEqual([hal, ida]);
    expect(await make({})).toEqual([]);
    expect((await byCard(first.token)).json().person).toEqual({ id: hal, name: "Hal" });
    const [again] = await make({ personIds: [hal] });
    expect(outcome(await byCard(first.token))).toBe("410 card-not-valid");
    expect(outcome(await byCard(again.token))).toBe("200");
    expect(outcome(await byCard(second.token))).toBe("200");
    expect(outcome(await head.post(`/api/classes/${classId}/people/${hal}/card/revoke`))).toBe("204");
    expect(outcome(await byCard(again.token))).toBe("410 card-not-valid");
    expect(outcome(await head.post(`/api/classes/${classId}/people/${ida}/leave`))).toBe("204");
    expect(outcome(await byCard(second.token))).toBe("410 card-not-valid");
    const stored = JSON.stringify(await database.query.selectFrom("cards").selectAll().execute());
    for (const { token } of [first, second, again]) expect(stored).not.toContain(token);
    expect((await people(classId)).map(({ hasCard }: { hasCard: boolean }) => hasCard)).toEqual([false]);
  });

  test("the code on a card gives the same right as its QR code, and goes with it", async () => {
    const { classId, code: classCode } = await testClass(head);
    const { id } = (await head.post(`/api/classes/${classId}/people`, { name: "Kit" })).json();
    const make = async () =>
      (await head.post(`/api/classes/${classId}/cards`, { personIds: [id] })).json().cards[0] as Card;
    const byCode = (code: string, more: object = {}) =>
      anyone.post("/api/join/card-code", { code, bench: "Bench", ...more });
    const first = await make();
    expect(first.code).toMatch(/^([34679ACDEFGHJKMNPQRTWXY]{4}-){3}[34679ACDEFGHJKMNPQRTWXY]{4}$/);
    const joined = await byCode(first.code.toLowerCase().replaceAll("-", " "), { pin: "4711" });
    expect(joined.json()).toMatchObject({ person: { id, name: "Kit" }, class: { id: classId } });
    expect((await asking(school, benchCookies(joined)).get("/api/bench")).json().person.id).toBe(id);
    expect(outcome(await byCode(first.code))).toBe("403 wrong-pin");
    expect(outcome(await byCode(first.code, { pin: "4711" }))).toBe("200");
    for (const wrong of [classCode, first.token.slice(0, 40), "ACDE-FGHJ-KMNP-QRTW", first.code.slice(1)]) {
      expect(outcome(await byCode(wrong))).toBe("410 card-code-not-valid");
    }
    expect(outcome(await join(anyone, first.code, "Kit"))).toBe("410 code-not-valid");
    const second = await make();
    expect(outcome(await byCode(first.code, { pin: "4711" }))).toBe("410 card-code-not-valid");
    expect(outcome(await byCode(second.code, { pin: "4711" }))).toBe("200");
    const stored = JSON.stringify(await database.query.selectFrom("cards").selectAll().execute());
    for (const { code } of [first, second]) expect(stored).not.toContain(code.replaceAll("-", ""));
    expect(outcome(await head.post(`/api/classes/${classId}/people/${id}/card/revoke`))).toBe("204");
    expect(outcome(await byCode(second.code, { pin: "4711" }))).toBe("410 card-code-not-valid");
  });

  test("who guesses at codes of cards waits, and at secrets of cards too", async () => {
    const wrong = (path: string, body: object) => anyone.post(path, { ...body, bench: "Bench" }).then(outcome);
    const code = () => wrong("/api/join/card-code", { code: "ACDE-FGHJ-KMNP-QRTW" });
    // What was wrong before is forgotten.
    school.pass(2 * HOUR_MS);
    for (let k = 0; k < 60; k++) expect(await code()).toBe("410 card-code-not-valid");
    expect(await code()).toBe("429 wait-first");
    expect(await wrong("/api/join/card", { token: "a".repeat(43) })).toBe("429 wait-first");
    school.pass(2 * HOUR_MS);
  });

  test("who leaves the class is off its benches, and comes back as the same person", async () => {
    const { classId, code } = await testClass(head);
    const joined = await join(anyone, code, "Jo");
    const { id } = joined.json().person;
    const bench = asking(school, benchCookies(joined));
    expect(outcome(await head.post(`/api/classes/${classId}/people/${id}/leave`))).toBe("204");
    expect(outcome(await bench.get("/api/bench"))).toBe("409 nobody-joined");
    expect(outcome(await head.post(`/api/classes/${classId}/people/${id}/leave`))).toBe("404 no-such-thing");
    expect((await head.post(`/api/classes/${classId}/people`, { name: "JO", personId: id })).json()).toEqual({ id });
    expect((await join(bench, code, "jo")).json().person.id).toBe(id);
  });

  test("a bench that an instructor signs out has to join again, as another", async () => {
    const { classId, code } = await testClass(head);
    const joined = await join(anyone, code, "Kim");
    const bench = asking(school, benchCookies(joined));
    const { devices } = (await head.get(`/api/classes/${classId}/devices`)).json();
    expect(devices).toMatchObject([{ name: "Bench 1", signedOutAt: null, people: [{ name: "Kim" }] }]);
    expect(outcome(await head.post(`/api/devices/${devices[0].id}/sign-out`))).toBe("204");
    expect(outcome(await bench.get("/api/bench"))).toBe("401 not-signed-in");
    expect((await join(bench, code, "Kim")).json().deviceId).not.toBe(devices[0].id);
  });

  test("the cookie of a bench is for this server alone, and no script reads it", async () => {
    const { code } = await testClass(head);
    const [cookie] = (await join(anyone, code, "Lou")).cookies;
    expect(cookie).toMatchObject({ name: "gatefall_bench", httpOnly: true, sameSite: "Strict", path: "/api" });
  });

  test.each([
    { sent: { name: "\u200b" }, code: "400 unreadable-name" },
    { sent: { name: "a\u202eb" }, code: "400 unreadable-name" },
    { sent: { name: "a\ud800" }, code: "400 unreadable-name" },
    { sent: { name: "..." }, code: "400 unreadable-name" },
    { sent: { name: "x".repeat(101) }, code: "400 text" },
    { sent: { pin: "123" }, code: "400 digits" },
    { sent: { pin: "12a4" }, code: "400 digits" },
    { sent: { more: 1 }, code: "400 unknown-field" },
  ])("$sent is refused: $code", async ({ sent, code }) => {
    const made = await testClass(head);
    expect(outcome(await join(anyone, made.code, "Max", sent))).toBe(code);
    expect(await people(made.classId)).toEqual([]);
  });
});
