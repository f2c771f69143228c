import { describe, expect, test } from "vitest";
import { changeAdvice } from "../../../src/handover/change/changeAdvice";
import { PackChange } from "../../../src/handover/change/packChange";
import { dialTo, KEYED } from "./changeHands";

/** What is said of a change now. */
const said = (change: PackChange, help: "full" | "counts" | "silent" = "full") => changeAdvice(change, help)?.say ?? "";

describe.each(KEYED)("$id", (profile) => {
  const wanted = (profile.asSet ?? []).map((number, k) => (number + 9 + 4 * k) % 100);
  const { index } = profile.changing;

  test("whoever does what is said, in order, changes the combination", () => {
    const change = new PackChange(profile, profile.asSet ?? [], wanted);
    expect(said(change)).toMatch(/^Dial current, to the changing index: turn (left|right), at least/);
    dialTo(change, profile, change.present, index);
    expect(said(change)).toBe("Every wheel is at the key port. Insert the change key.");
    change.act("insertKey");
    expect(said(change)).toBe("Turn the key.");
    change.act("turnKey");
    expect(said(change)).toMatch(/^Dial new, to the changing index/);
    dialTo(change, profile, wanted, index);
    expect(said(change)).toBe("The new combination is dialed. Turn the key back.");
    change.act("turnKeyBack");
    expect(said(change)).toBe("Remove the key.");
    change.act("withdrawKey");
    expect(said(change)).toMatch(/^Prove it at the opening index: turn (left|right), at least/);
    expect(change.setCombination).toEqual(wanted);
  });

  test("a miss is told before the key can spoil anything, and nothing is told in silence", () => {
    const change = new PackChange(profile, profile.asSet ?? [], wanted);
    dialTo(change, profile, change.present, index, [4]);
    expect(said(change)).toMatch(/^This wheel will not line up\. Start over: turn/);
    expect(said(change, "counts")).not.toMatch(/right|Start over/);
    expect(said(change, "silent")).toBe("");
    change.act("insertKey");
    expect(said(change)).toBe("Do not turn the key. Remove it.");
    expect(said(change, "counts")).toBe("");
  });
});
