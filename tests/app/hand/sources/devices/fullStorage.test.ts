import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import {
  chooseCamera,
  chooseSide,
  lastCamera,
  sideAsked,
} from "../../../../../src/app/hand/sources/devices/camera/openCamera";
import { recallText, rememberText } from "../../../../../src/app/hand/sources/devices/deviceMemory";
import { HandWatch } from "../../../../../src/app/hand/sources/devices/handWatch";
import { KNOB_KEYS } from "../../../../../src/app/hand/sources/devices/knobKeys";
import { keepMarks, rememberedMarks } from "../../../../../src/app/hand/sources/devices/ordinary/marks";
import { StopTaking } from "../../../../../src/app/hand/sources/devices/stopTaking";
import { rememberedSetup, rememberSetup } from "../../../../../src/app/setup/session/rememberedSetup";
import { StubStorage } from "../../../../support/board/stubStorage";

let storage = new StubStorage();

beforeEach(() => {
  storage = new StubStorage();
  vi.stubGlobal("localStorage", storage);
});
afterEach(() => {
  // What has room again is no longer of this page alone.
  storage.isFull = false;
  for (const key of storage.asked) rememberText(key, null);
  vi.unstubAllGlobals();
});

const MARKS = { middle: { x: 0.4, y: 0.5 }, index: { x: 0.4, y: 0.2 } };
const SETUP = { at: 1, perTurn: 100, resolution: 0.04, noise: null, rate: null, delay_ms: null, errors: [0.1] };

describe("what was chosen or found of a device holds on this page though its storage is full", () => {
  test.each([
    ["the camera", () => chooseCamera("second"), () => lastCamera(), "second"],
    ["its side", () => chooseSide("user"), () => sideAsked(), "user"],
    ["the marks", () => keepMarks("one", MARKS), () => rememberedMarks("one"), MARKS],
    ["the setup", () => rememberSetup("encoder", undefined, SETUP), () => rememberedSetup("encoder"), SETUP],
    [
      "what records a stop",
      () => new StopTaking({ dial: undefined }).choose("rest"),
      () => new StopTaking({ dial: undefined }).way,
      "rest",
    ],
  ])("%s", (_, choose, chosen, expected) => {
    storage.isFull = true;
    choose();
    expect(chosen()).toEqual(expected);
    expect([...storage.texts]).toEqual([]);
  });

  test("whether a knob shows numbers", () => {
    storage.isFull = true;
    const watch = new HandWatch({ dial: undefined }, () => undefined);
    watch.begin(KNOB_KEYS, { close: () => undefined });
    watch.setNumbers(true);
    watch.end();
    watch.begin(KNOB_KEYS, { close: () => undefined });
    expect(watch.isAsking).toBe(true);
    watch.end();
  });
});

test("what was stored before is not what was chosen since; and with room again, the storage has it", () => {
  rememberText("some", "old");
  storage.isFull = true;
  rememberText("some", "new");
  expect([recallText("some"), storage.getItem("some")]).toEqual(["new", "old"]);
  storage.isFull = false;
  rememberText("some", "newest");
  storage.texts.set("some", "of another page");
  expect(recallText("some")).toBe("of another page");
});
