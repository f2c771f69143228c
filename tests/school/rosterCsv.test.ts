import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { foldedName, tidyName } from "../../src/school/names/foldedName";
import { isReadableName } from "../../src/school/names/readable";
import { type KnownPerson, previewRoster } from "../../src/school/people/rosterCsv";

const known = (id: string, name: string, isInClass = false, extraTime = 0): KnownPerson => ({
  id,
  name,
  extraTime,
  isInClass,
});

/** Each row as "outcome name", with the code of what is wrong. */
const short = (csv: string, people: readonly KnownPerson[] = []) =>
  previewRoster(csv, people).map((row) =>
    row.outcome === "refused" ? `refused ${row.name}: ${row.why.code}` : `${row.outcome} ${row.name}`,
  );

describe("a file of names", () => {
  test.each([
    { what: "names alone", csv: "Ann\nBob\n", rows: ["added Ann", "added Bob"] },
    { what: "a heading", csv: "Name\nAnn", rows: ["added Ann"] },
    {
      what: "first and last names",
      csv: "Last name,First name\nHill,Ann\nVale,\n",
      rows: ["added Ann Hill", "added Vale"],
    },
    {
      what: "tabs, a mark of byte order, lines of another system",
      csv: "\uFEFFName\tClass\r\nAnn\tA\r\n",
      rows: ["added Ann"],
    },
    { what: "a quoted comma", csv: 'name\n"Hill, Ann"\n', rows: ["added Hill, Ann"] },
    { what: "empty rows", csv: "\n,,\nAnn\n  \n", rows: ["added Ann"] },
    { what: "nothing", csv: "", rows: [] },
    { what: "a heading alone", csv: "name;extra time", rows: [] },
    { what: "one name twice", csv: "Ann\n ANN \n", rows: ["added Ann", "refused ANN: twice"] },
    { what: "no name", csv: "name,extra time\n,20\n", rows: ["refused : no-name"] },
    { what: "a name too long", csv: "x".repeat(101), rows: [`refused ${"x".repeat(100)}: text`] },
    { what: "signs that nobody sees", csv: "An\u200bn", rows: ["refused An\u200bn: unreadable-name"] },
    { what: "signs alone", csv: "---", rows: ["refused ---: unreadable-name"] },
    { what: "extra time that is none", csv: "Ann,much", rows: ["refused Ann: whole"] },
    { what: "too much extra time", csv: "Ann,301", rows: ["refused Ann: whole"] },
  ])("$what", ({ csv, rows }) => {
    expect(short(csv)).toEqual(rows);
  });

  test("a name means whoever of the class has it, before others of the school", () => {
    const people = [known("1", "Ann"), known("2", "ann", true), known("3", "Bob"), known("4", "BOB"), known("5", "Cy")];
    expect(short("ANN\nBob\ncy", people)).toEqual(["matched ann", "refused Bob: several-people", "matched Cy"]);
  });

  test.each([
    { cell: "", sets: null },
    { cell: "25", sets: null },
    { cell: "30 %", sets: 30 },
    { cell: "0", sets: 0 },
  ])("extra time '$cell' sets $sets for somebody who has 25 %", ({ cell, sets }) => {
    expect(previewRoster(`name,extra time\nAnn,${cell}`, [known("1", "Ann", true, 25)])).toMatchObject([
      { outcome: "matched", extraTime: sets },
    ]);
  });

  test("more rows than a class has people are refused at once", () => {
    expect(() => previewRoster("a\n".repeat(501), [])).toThrow("more than 500 rows");
    expect(previewRoster("a\n".repeat(500), [])).toHaveLength(500);
  });

  test("of any text no two names that are added fold alike, and no row is lost", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.array(fc.string()), (text, names) => {
        const rows = previewRoster([text, ...names].join("\n").slice(0, 400), [known("1", "Ann")]);
        const added = rows.flatMap((row) => (row.outcome === "added" ? [foldedName(row.name)] : []));
        expect(new Set(added).size).toBe(added.length);
        for (const row of rows) {
          if (row.outcome === "added") expect(isReadableName(row.name)).toBe(true);
        }
      }),
    );
  });
});

describe("a name", () => {
  test.each([
    ["Straße", "STRASSE"],
    ["  Ann\u00a0 Hill ", "ann hill"],
    ["Ｆｉｎｎ", "finn"],
    ["Zoe\u0308", "ZOË"],
    ["ΣΑΣ", "σας"],
    ["ﬁnn", "FINN"],
  ])("%j and %j are one", (one, other) => {
    expect(foldedName(one)).toBe(foldedName(other));
  });

  test.each([
    ["Ann", "Anne"],
    ["Zoë", "Zoe"],
    ["Ann Hill", "AnnHill"],
  ])("%j and %j are two", (one, other) => {
    expect(foldedName(one)).not.toBe(foldedName(other));
  });

  test("folding and tidying twice is the same as once, and tidying changes no meaning", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (name) => {
        expect(foldedName(foldedName(name))).toBe(foldedName(name));
        expect(tidyName(tidyName(name))).toBe(tidyName(name));
        expect(foldedName(tidyName(name))).toBe(foldedName(name));
      }),
    );
  });
});
