import { describe, expect, test } from "vitest";
import { tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { ChangeTry } from "../../../../src/app/sittings/tries/changeTry";
import { HandoverTry } from "../../../../src/app/sittings/tries/handoverTry";
import { TroubleTry } from "../../../../src/app/sittings/tries/troubleTry";
import { describeSource } from "../../../../src/realdial/sources/sourceDescription";
import { changeStation, handoverStation, troubleStation } from "../../../support/testSheet";
import { setupOf } from "../jobTries";

const ENCODER = describeSource("encoder", 0.05);
const OWNER = { sittingId: "one", personId: "tavro", index: 0, now_ms: 1_700_000_000_000 };

describe.each([
  ["change", () => new ChangeTry(setupOf(changeStation()))],
  ["trouble", () => new TroubleTry(setupOf(troubleStation()))],
  ["handover", () => new HandoverTry(setupOf(handoverStation()))],
] as const)("a try at a %s in which a device lost the hand", (_, begun) => {
  test("is marked, in the sitting and in the logbook", () => {
    const one = begun();
    one.session.noteSource(ENCODER);
    expect(one.session.noteDoubt("sight-lost")).toBe(true);
    one.end();
    const marked = { sources: [ENCODER], doubts: ["sight-lost"] };
    expect(one.result()).toMatchObject(marked);
    expect(tryWrite(one, OWNER).record).toMatchObject(marked);
  });

  test("and one in which none did is not", () => {
    const one = begun();
    one.session.noteSource(ENCODER);
    one.end();
    expect(one.result()).not.toHaveProperty("doubts");
    expect(tryWrite(one, OWNER).record).not.toHaveProperty("doubts");
  });
});
