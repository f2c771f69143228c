import { describe, expect, test } from "vitest";
import { type BenchNews, benchNews, newsSentence } from "../../../src/school/people/benchNews";

const CLASS = { id: "c", name: "Fitters 1" };
const ADA = { id: "ada", name: "Ada", class: CLASS };
const answer = {
  school: { id: "s", name: "Millbrook" },
  class: CLASS,
  person: { id: "ada", name: "Ada" },
  people: [{ id: "ada", name: "Ada" }],
  deviceId: "d",
  now: 10,
};

describe("what a bench hears when it asks who it is", () => {
  test.each<{ what: string; heard: Parameters<typeof benchNews>[1]; news: BenchNews[]; changed?: object[] }>([
    { what: "nothing new", heard: answer, news: [] },
    {
      what: "another name",
      heard: { ...answer, people: [{ id: "ada", name: "Ada Hill" }] },
      news: [{ kind: "renamed", before: "Ada", name: "Ada Hill" }],
      changed: [{ ...ADA, name: "Ada Hill" }],
    },
    {
      what: "a lost card",
      heard: { ...answer, people: [{ id: "ada", name: "Ada", cardLostAt: 5 }] },
      news: [{ kind: "card-lost", name: "Ada" }],
      changed: [{ ...ADA, cardLostAt: 5 }],
    },
    {
      what: "a class that ended",
      heard: { ...answer, classEndedAt: 7 },
      news: [{ kind: "class-ended", class: "Fitters 1" }],
    },
    {
      what: "others alone",
      heard: { ...answer, people: [{ id: "bo", name: "Bo" }] },
      news: [{ kind: "left", name: "Ada" }],
    },
    { what: "nobody", heard: null, news: [{ kind: "left", name: "Ada" }] },
  ])("$what", ({ heard, news, changed = [] }) => {
    expect(benchNews([ADA], heard)).toEqual({ news, changed });
  });

  test("a lost card is told once", () => {
    const heard = { ...answer, people: [{ id: "ada", name: "Ada", cardLostAt: 5 }] };
    expect(benchNews([{ ...ADA, cardLostAt: 5 }], heard).news).toEqual([]);
    expect(benchNews([{ ...ADA, cardLostAt: 4 }], heard).news).toHaveLength(1);
  });

  test("is told in whole sentences", () => {
    const all: readonly BenchNews[] = [
      { kind: "signed-out" },
      { kind: "left", name: "Ada" },
      { kind: "card-lost", name: "Ada" },
      { kind: "renamed", before: "Ada", name: "Ada Hill" },
      { kind: "class-ended", class: "Fitters 1" },
    ];
    for (const one of all) expect(newsSentence(one)).toMatch(/^[A-Z].*\.$/);
    expect(newsSentence({ kind: "renamed", before: "Ada", name: "Ada Hill" })).toContain("Ada to Ada Hill");
  });
});
