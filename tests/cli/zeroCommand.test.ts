import { describe, expect, test } from "vitest";
import { run } from "./fakeTerminal";

const CSV = "direction,deviation\nright,0.2\nright,0.1\nright,0.3\nleft,-0.3\nleft,-0.2\nleft,-0.1\n";
const zero = (text: string, ...more: string[]) => run(["zero", "-", ...more], { "-": text });

const closeTo = (value: number) => expect.closeTo(value, 9);
// Student's t for 2 and 4 degrees of freedom at 97.5 %, as tables print them.
const T2 = 4.302652729;
const T4 = 2.776445105;
const SE = 0.1 / Math.sqrt(3);

describe("zero", () => {
  test("as JSON, worked out by hand", async () => {
    const { status, out, complaints } = await zero(CSV, "--json", "--resolution", "0");
    expect([status, complaints]).toEqual([0, []]);
    // The t distribution of 2 degrees of freedom has a closed form: P(T <= t) = 1/2 + t / (2 sqrt(2 + t^2)).
    const below = (t: number) => 0.5 + t / (2 * Math.sqrt(2 + t * t));
    const conformance = below(0.3 / SE) - below(-0.7 / SE);
    const side = {
      n: 3,
      sd: closeTo(0.1),
      spread: closeTo(0.2),
      conformance: closeTo(conformance),
      verdict: "accept",
      isTooCoarse: false,
    };
    const around = (mean: number) => ({
      ...side,
      mean: closeTo(mean),
      ci95: [closeTo(mean - T2 * SE), closeTo(mean + T2 * SE)],
    });
    const reach = T4 * SE * Math.SQRT2;
    expect(JSON.parse(out)).toEqual({
      right: around(0.2),
      left: around(-0.2),
      lostMotion: { estimate: closeTo(0.4), ci95: [closeTo(0.4 - reach), closeTo(0.4 + reach)] },
    });
    expect(out.endsWith("}\n")).toBe(true);
  });

  test("JSON Lines come to the same", async () => {
    const lines = CSV.trim()
      .split("\n")
      .slice(1)
      .map((line) => line.split(","))
      .map(([direction, deviation]) => JSON.stringify({ direction, deviation: Number(deviation) }));
    expect(await zero(lines.join("\n"), "--json")).toEqual(await zero(CSV, "--json"));
  });

  test("in words", async () => {
    const { status, out } = await zero(CSV);
    expect(status).toBe(0);
    // Scatter alone: u = 0.1 / sqrt(3), nu = 2, t = 4.303, so 0.248. With the steps: u = sqrt(0.1^2 / 3 + 0.1^2 / 12),
    // nu = 2 (1 + 1/4)^2 = 3.125, t = 3.11, so 0.201. The wider counts.
    expect(out).toMatch(/right +3 +0\.200 +0\.100 +0\.200 +-0\.048 to 0\.448/);
    expect(out).toMatch(/^Right: accepted\. /m);
    expect(out).toMatch(/^Left: accepted\. /m);
    expect(out).toMatch(/^Lost motion: 0\.40 graduations/m);
  });

  test.each([
    { more: ["--tolerance", "0.25"], verdict: "not shown yet" },
    { more: ["--tolerance", "0.02", "--risk", "0.1"], verdict: "reject" },
    { more: ["--risk", "0.001"], verdict: "not shown yet" },
    { more: ["--risk", "0.001", "--tolerance", "5"], verdict: "accept" },
  ])("$more: $verdict", async ({ more, verdict }) => {
    const { status, out } = await zero(CSV, "--json", ...more);
    expect([status, JSON.parse(out).right.verdict]).toEqual([0, verdict]);
  });

  test("tells of itself", async () => {
    const { status, out } = await run(["zero", "--help"]);
    expect(status).toBe(0);
    for (const word of ["gatefall zero FILE", "--tolerance", "--risk", "--json", "deviation"])
      expect(out).toContain(word);
    expect((await run(["--help"])).out).toContain("zero");
  });
});

describe("bad readings get status 1, no result, and a sentence each", () => {
  const bad = "right,0.2\nup,0.1\nright,NaN\nleft,-70\n";
  const says = [/^line 2: direction/, /^line 3: deviation/, /^line 4: deviation.*half a turn/];

  test("on standard error", async () => {
    const { status, out, complaints } = await zero(bad);
    expect([status, out]).toEqual([1, ""]);
    expect(complaints).toEqual(says.map((pattern) => expect.stringMatching(pattern)));
  });

  test("and as JSON where JSON is read", async () => {
    const { status, out, complaints } = await zero(bad, "--json");
    const errors = out.trimEnd().split("\n");
    expect(status).toBe(1);
    expect(errors.map((line) => JSON.parse(line).error)).toEqual(complaints);
    expect(complaints).toHaveLength(3);
  });

  test.each([
    { why: "an empty file", text: "", count: 2 },
    { why: "one side alone", text: "right,0\nright,0.1\n", count: 1 },
    { why: "a single reading of a side", text: "right,0\nright,0.1\nleft,0\n", count: 1 },
  ])("$why", async ({ text, count }) => {
    const { status, out, complaints } = await zero(text);
    expect([status, out, complaints.length]).toEqual([1, "", count]);
  });
});

describe("a command line that makes no sense gets status 2 and a sentence", () => {
  test.each([
    { args: ["zero"], says: "one file" },
    { args: ["zero", "a", "b"], says: "one file" },
    { args: ["zero", "nowhere.csv"], says: "nowhere.csv" },
    { args: ["zero", "-", "--tolerance", "0"], says: "--tolerance" },
    { args: ["zero", "-", "--tolerance=-1"], says: "--tolerance" },
    { args: ["zero", "-", "--tolerance", "wide"], says: '"wide"' },
    { args: ["zero", "-", "--risk", "0.5"], says: "--risk" },
    { args: ["zero", "-", "--risk", "0"], says: "--risk" },
    { args: ["zero", "-", "--loud"], says: "--loud" },
  ])("$args", async ({ args, says }) => {
    const { status, out, complaints } = await run(args, { "-": CSV });
    expect([status, out]).toEqual([2, ""]);
    expect(complaints).toEqual([expect.stringContaining(says)]);
  });
});

describe("the resolution of the readings (GUM F.2.2)", () => {
  const same = (deviation: string) => `right,${deviation}\n`.repeat(3) + `left,${deviation}\n`.repeat(3);
  const rightOf = async (text: string, ...more: string[]) =>
    JSON.parse((await zero(text, "--json", ...more)).out).right;

  test("identical whole graduations show nothing: u = 1 / sqrt(12), P = 0.917 worked out from normal tables", async () => {
    const right = await rightOf(same("0"));
    expect(right).toMatchObject({ verdict: "not shown yet", isTooCoarse: true });
    expect(right.conformance).toBeCloseTo(0.9167, 3);
    expect((await zero(same("0"))).out).toMatch(/^Right: not shown: the readings are too coarse\./m);
  });

  test("identical tenths well inside are accepted, but never with 100 %", async () => {
    expect(await rightOf(same("0.2"))).toMatchObject({ verdict: "accept", isTooCoarse: false });
    const { out } = await zero(same("0.2"));
    expect(out).not.toMatch(/100(\.0)? %/);
    expect(out).toContain("more than 99.9 %");
  });

  test("it can be given, and 0 stands for readings without steps", async () => {
    expect(await rightOf(same("0.2"), "--resolution", "1")).toMatchObject({ isTooCoarse: true });
    expect(await rightOf(same("0"), "--resolution", "0")).toMatchObject({ verdict: "accept", conformance: 1 });
  });

  test.each(["-1", "51", "x"])("--resolution %s makes no sense", async (resolution) => {
    const { status, complaints } = await zero(CSV, `--resolution=${resolution}`);
    expect([status, complaints]).toEqual([2, [expect.stringContaining("--resolution must be a number")]]);
  });

  test("the interval is the wider for it", async () => {
    const [fine, coarse] = [await rightOf(CSV, "--resolution", "0"), await rightOf(CSV, "--resolution", "2")];
    expect(coarse.ci95[1] - coarse.ci95[0]).toBeGreaterThan(fine.ci95[1] - fine.ci95[0]);
  });

  test("a run of a hundred thousand digits is refused at once", async () => {
    const began = performance.now();
    const { status, complaints } = await zero(`right,${"1".repeat(100_000)}x\nleft,0.1\n`);
    expect(status).toBe(1);
    expect(complaints[0]).toMatch(/^line 1: deviation must be a number/);
    expect(performance.now() - began).toBeLessThan(2000);
  });
});
