import { describe, expect, test } from "vitest";
import { BASE_HALF, DISC_RADIUS, MARKER_SIDE, MARKERS, TRACKS } from "../../../src/realdial/sheet/design";
import { baseSheetSvg, discSheetSvg, PAPERS, type Paper } from "../../../src/realdial/sheet/sheetSvg";

const papers = Object.keys(PAPERS) as Paper[];
const margin = 5;

/** Numbers of the disc by the angle, in degrees clockwise from up, at which they are printed. */
const numbersOf = (svg: string) =>
  new Map(
    [...svg.matchAll(/rotate\((-?\d+)\)" y="-[\d.]+">(\d+)</g)].map(([, turn, number]) => [
      (Number(turn) + 360) % 360,
      Number(number),
    ]),
  );

describe.each(papers)("on %s", (paper) => {
  const { width, height } = PAPERS[paper];

  test("a mm of the drawing is a mm of the page", () => {
    for (const svg of [baseSheetSvg(paper), discSheetSvg(paper, { graduations: 100, numbers: "clockwise" })]) {
      expect(svg).toContain(
        `width="${width}mm" height="${height}mm" viewBox="${-width / 2} ${-height / 2} ${width} ${height}"`,
      );
    }
  });

  test("a browser prints it on its own paper, without margins that would shrink it", () => {
    for (const svg of [baseSheetSvg(paper), discSheetSvg(paper, { graduations: 60, numbers: "clockwise" })]) {
      expect(svg).toContain(`<style>@page{size:${width}mm ${height}mm;margin:0}</style>`);
    }
  });

  test("both sheets fit with a margin that printers leave", () => {
    expect(Math.min(width, height) / 2 - BASE_HALF).toBeGreaterThan(margin);
    expect(Math.min(width, height) / 2 - DISC_RADIUS).toBeGreaterThan(margin);
  });

  test("a line of 100 mm each way shows the print's scale", () => {
    const lines = [...baseSheetSvg(paper).matchAll(/d="M[-\d. ]+([hv])(\d+)"[^>]*class="check"/g)];
    expect(lines.map(([, way, length]) => [way, length])).toEqual([
      ["h", "100"],
      ["v", "100"],
    ]);
  });
});

describe("the disc", () => {
  test.each([
    [100, "clockwise", 72, 20, 10],
    [100, "counterclockwise", 288, 20, 10],
    [60, "clockwise", 60, 10, 12],
    [60, "counterclockwise", 300, 10, 12],
  ] as const)("of %d, %s, has at %d degrees the number %d, and %d numbers", (...row) => {
    const [graduations, numbers, degrees, number, size] = row;
    const printed = numbersOf(discSheetSvg("a4", { graduations, numbers }));
    expect([printed.get(0), printed.get(degrees), printed.size]).toEqual([0, number, size]);
  });

  test.each([100, 60] as const)("has %d graduations", (graduations) => {
    const svg = discSheetSvg("letter", { graduations, numbers: "clockwise" });
    const [, lines = ""] = /<path d="([^"]+)" stroke="#000" stroke-width="0.5"/.exec(svg) ?? [];
    expect(lines.match(/M/g)).toHaveLength(graduations);
  });

  test("has a black sector for each cycle of each track", () => {
    const svg = discSheetSvg("a4", { graduations: 100, numbers: "clockwise" });
    const sectors = [...svg.matchAll(/<path d="([^"]+)"\/>/g)].map(([, path = ""]) => path.match(/M/g)?.length);
    expect(sectors).toEqual(TRACKS.map(({ cycles }) => cycles));
  });
});

describe("the markers", () => {
  const turned = (code: readonly string[]) =>
    code.map((_, x) =>
      code
        .map((row) => row[x])
        .reverse()
        .join(""),
    );
  const turnsOf = (code: readonly string[]) => {
    const [quarter, half] = [turned(code), turned(turned(code))];
    return [code, quarter, half, turned(half)];
  };
  const unlike = (one: readonly string[], other: readonly string[]) =>
    [...one.join("")].filter((cell, k) => cell !== other.join("")[k]).length;

  const pairs = MARKERS.flatMap(({ code }, k) => MARKERS.slice(k + 1).map((other) => [code, other.code] as const));

  test.each(pairs)("%j and %j are told apart however they are turned", (code, other) => {
    expect(Math.min(...turnsOf(other).map((turn) => unlike(code, turn)))).toBeGreaterThanOrEqual(6);
  });

  test.each(MARKERS.map(({ code }) => [code]))("%j shows which way up it is", (code) => {
    const others = turnsOf(code).slice(1);
    expect(Math.min(...others.map((turn) => unlike(code, turn)))).toBeGreaterThanOrEqual(8);
  });

  test("lie on the sheet, clear of the disc and the index", () => {
    for (const { x, y } of MARKERS) {
      const [near, far] = [Math.abs(x) - MARKER_SIDE / 2, Math.abs(y) + MARKER_SIDE / 2];
      expect(far).toBeLessThan(BASE_HALF);
      expect(Math.hypot(near, near)).toBeGreaterThan(DISC_RADIUS + 15);
    }
  });
});
