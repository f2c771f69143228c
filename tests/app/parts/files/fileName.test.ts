import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fileNameOf } from "../../../../src/app/parts/files/fileName";
import { harmlessName, harmlessText } from "../../../../src/lock/harmlessText";

/** By the clock of this device, as the names are. */
const AT = new Date(2026, 10, 28, 14, 5).getTime();

describe("the name of a saved file", () => {
  test("tells what it is, whose, and when", () => {
    expect(fileNameOf({ what: "attempts", person: "Mibsy Orr", at: AT, ending: "csv" })).toBe(
      "gatefall-attempts-Mibsy-Orr-2026-11-28-1405.csv",
    );
    expect(fileNameOf({ what: "logbook", person: null, at: AT, ending: "json" })).toBe(
      "gatefall-logbook-2026-11-28-1405.json",
    );
  });

  test("keeps letters of any script, and leaves out what a path or the eye would stumble over", () => {
    const name = (person: string) => fileNameOf({ what: "record", person, at: AT, ending: "json" });
    expect(name("Łucja Ångström")).toBe("gatefall-record-Łucja-Ångström-2026-11-28-1405.json");
    expect(name("../../etc/passwd")).toBe("gatefall-record-etc-passwd-2026-11-28-1405.json");
    expect(name("\u202Egpj.exe")).toBe("gatefall-record-gpj-exe-2026-11-28-1405.json");
    expect(name("...")).toBe("gatefall-record-2026-11-28-1405.json");
  });

  test("cuts a long name between letters", () => {
    const long = fileNameOf({ what: "record", person: "日".repeat(100), at: AT, ending: "json" });
    expect(long).toBe(`gatefall-record-${"日".repeat(30)}-2026-11-28-1405.json`);
  });

  test("fits any file system, whatever the name of the person", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 80 }), fc.string({ maxLength: 80 }), (person, what) => {
        const name = fileNameOf({ what, person, at: AT, ending: "csv" });
        expect(name).toMatch(/^gatefall-[\p{L}\p{M}\p{N}-]*2026-11-28-1405\.csv$/u);
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
      }),
    );
  });
});

describe("text from outside", () => {
  test.each([
    "\u202A",
    "\u202B",
    "\u202C",
    "\u202D",
    "\u202E",
    "\u2066",
    "\u2067",
    "\u2068",
    "\u2069",
    "\u200E",
    "\u200F",
  ])("shows the control %j instead of obeying it", (control) => {
    expect(harmlessText(`Mib${control}sy`)).toBe("Mib\uFFFDsy");
  });

  test("keeps letters of every script, and a name on one line", () => {
    expect(harmlessText("مريم עדה Łucja 日本\n2")).toBe("مريم עדה Łucja 日本\n2");
    expect(harmlessName(" Mibsy \n\t Orr\u0007 ")).toBe("Mibsy Orr\uFFFD");
  });
});
