import { describe, expect, test } from "vitest";
import clean from "../../shared/handovers/clean.json" with { type: "json" };
import lockedOut from "../../shared/handovers/locked-out.json" with { type: "json" };
import { FAULT_WORDS } from "../../src/handover/run/rules/faultWords";
import { run } from "./fakeTerminal";

const check = (value: unknown, ...more: string[]) =>
  run(["handover", "check", "-", ...more], { "-": typeof value === "string" ? value : JSON.stringify(value) });

describe("handover check", () => {
  test("a clean handover: status 0", async () => {
    const { status, out, complaints } = await check(clean);
    expect([status, complaints]).toEqual([0, []]);
    expect(out).toMatch(
      /^Handed over with every proof and without a fault\.\n\nNote:\n {2}The door is not the one that seed 5 draws\./,
    );
  });

  test("a bad one: status 1, what was missing and every fault in order", async () => {
    const { status, out } = await check(lockedOut);
    expect(status).toBe(1);
    expect(out).toMatch(/^Not handed over\. A simulated hand did the dialing\.\n\nMissing:\n {2}The mounting height/);
    const [, faults = ""] = out.split("Faults, in order:\n");
    const steps = [...faults.matchAll(/^ {2}Step (\d+)/gm)].map(([, step]) => Number(step));
    expect(steps.length).toBe(13);
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
    const { harmed, source } = FAULT_WORDS["locked-out"];
    expect(faults).toContain(`\n    Harmed: ${harmed}\n`);
    expect(faults).toContain(`\n    Source: ${source}.\n`);
    expect(faults.match(/Source: /g)).toHaveLength(13);
    expect(faults).toContain("Step 5, undone in the debrief: You are locked out");
  });

  test("as JSON", async () => {
    const { status, out } = await check(lockedOut, "--json");
    expect(status).toBe(1);
    const result = JSON.parse(out);
    expect(result).toMatchObject({ isClean: false, isHandedOver: false, undoneSteps: 5, isDoorDrawn: false });
    expect(result.missing[0]).toEqual({ code: "mounting", message: expect.stringContaining("34 to 48 inches") });
    const { happened, ...words } = FAULT_WORDS["set-off"];
    expect(result.faults[3]).toMatchObject({ code: "set-off", step: 3, isUndone: false, message: happened, ...words });
  });

  test.each([
    ["not JSON", "{", /is not JSON/],
    ["no handover", { format: "else" }, /-: handover: format must be/],
    ["a bad profile", { ...clean, profile: "none" }, /profile "none" is not known/],
    [
      "what cannot have happened",
      { ...clean, events: [{ type: "observer.left", at_ms: 0 }] },
      /step 1 \(events\[0\]\), observer.left, cannot have happened.*: Nobody is inside/,
    ],
  ])("%s: status 2 and a sentence", async (_, value, words) => {
    const { status, out, complaints } = await check(value);
    expect([status, out]).toEqual([2, ""]);
    expect(complaints[0]).toMatch(words);
  });

  test("another verb, or no file: status 2", async () => {
    for (const words of [
      ["handover"],
      ["handover", "show", "-"],
      ["handover", "check"],
      ["handover", "check", "a", "b"],
    ])
      expect((await run(words)).status).toBe(2);
  });

  test("tells of itself", async () => {
    const { status, out } = await run(["handover", "--help"]);
    expect(status).toBe(0);
    for (const word of ["gatefall handover check FILE", "--json", "undone in the debrief"]) expect(out).toContain(word);
    expect((await run(["--help"])).out).toContain("handover");
  });
});
