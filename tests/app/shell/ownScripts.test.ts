import { expect, test } from "vitest";
import { isOwnScript } from "../../../src/app/shell/ownScripts";

const PAGE = "https://school.example/training/index.html";

test.each([
  ["./assets/reader-1.js", true],
  ["/training/sw.js", true],
  ["https://school.example/training/sw.js", true],
  ["https://school.example/other/sw.js", false],
  ["../sw.js", false],
  ["https://elsewhere.example/training/sw.js", false],
  ["http://school.example/training/sw.js", false],
  ["./assets/picture.svg", false],
  ["data:text/javascript,alert(1)//training/sw.js", false],
  ["blob:https://school.example/1234.js", false],
])("%s as a script of the app: %s", (address, isOwn) => {
  expect(isOwnScript(address, PAGE)).toBe(isOwn);
});
