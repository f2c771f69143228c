import { describe, expect, test } from "vitest";
import { drawTrouble, kindsFor } from "../../../src/handover/trouble/drawTrouble";
import { markDiagnosis } from "../../../src/handover/trouble/markDiagnosis";
import { nextLook } from "../../../src/handover/trouble/nextLook";
import { TROUBLE_KINDS, type Trouble } from "../../../src/handover/trouble/trouble";
import { TroubleBench } from "../../../src/handover/trouble/troubleBench";
import { TROUBLE_GUIDE } from "../../../src/handover/trouble/troubleGuide";
import { troubleResult } from "../../../src/handover/trouble/troubleResult";
import { troubleSentence, troubleSizeWords } from "../../../src/handover/trouble/troubleWords";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";

const THREE = shippedProfile("three-wheel");
const ENCODER = shippedProfile("dial-encoder");

/** A bench on which everything has been looked at once. */
function lookedAt(kind: Trouble["kind"]) {
  const profile = kindsFor(THREE).includes(kind) ? THREE : ENCODER;
  const task = drawTrouble(profile, [kind], 5);
  const bench = new TroubleBench(task, seededChance(6));
  bench.holdAgainstRules();
  bench.turnRound();
  bench.pushPull();
  bench.readMarks();
  bench.pull("left");
  bench.readCam("left");
  bench.readCam("right");
  bench.dial([1.5], 10);
  return { task, bench };
}

describe("a diagnosis", () => {
  test.each(TROUBLE_KINDS)("of %s is marked on kind and size apart", (kind) => {
    const { task, bench } = lookedAt(kind);
    const { trouble } = task;
    const { tolerance } = TROUBLE_GUIDE[kind];
    const right = markDiagnosis(trouble, trouble, bench.log);
    expect(right.points).toEqual({ kind: 1, size: 1 });
    expect(right.headline).toMatch(/^Right: .*you named it exactly, within/);
    const near = markDiagnosis(trouble, { ...trouble, size: trouble.size + tolerance * 0.99 }, bench.log);
    expect(near.points).toEqual({ kind: 1, size: 1 });
    expect(near.headline).toMatch(/Its size is \d+\.\d\d .*you are off by \d+\.\d\d, within/);
    const far = markDiagnosis(trouble, { ...trouble, size: trouble.size - tolerance * 1.01 }, bench.log);
    expect(far.points).toEqual({ kind: 1, size: 0 });
    expect(far.sizeError).toBeCloseTo(-tolerance * 1.01, 9);
    expect(far.headline).toMatch(/^The right defect, .* but not its size\..*outside/);
  });

  test.each(TROUBLE_KINDS)("of %s by somebody who has not looked earns no points", (kind) => {
    const { task } = lookedAt(kind);
    const mark = markDiagnosis(task.trouble, task.trouble, []);
    expect(mark.isKindRight).toBe(true);
    expect(mark.points).toEqual({ kind: 0, size: 0 });
    expect(mark.headline).toMatch(/^Right, but a guess: you have not /);
  });

  test("of another kind earns no points, however near its size", () => {
    const { task, bench } = lookedAt("index-slipped");
    const named: Trouble = { kind: "lost-motion", part: null, size: task.trouble.size };
    const mark = markDiagnosis(task.trouble, named, bench.log);
    expect(mark).toMatchObject({ isKindRight: false, sizeError: null, isSizeWithin: false });
    expect(mark.points).toEqual({ kind: 0, size: 0 });
    expect(mark.headline).toBe(
      `That is not it. You named: ${troubleSentence(named)}. It is: ${troubleSentence(task.trouble)}.`,
    );
  });

  test("of the right kind at another wheel is in the wrong place", () => {
    const { task, bench } = lookedAt("wheel-off");
    const part = task.trouble.part === "1" ? "2" : "1";
    const mark = markDiagnosis(task.trouble, { ...task.trouble, part }, bench.log);
    expect(mark.points).toEqual({ kind: 0, size: 0 });
    expect(mark.headline).toBe(
      `The right defect, in the wrong place: wheel ${part} was named, and it is wheel ${task.trouble.part}, ${troubleSizeWords(task.trouble)}.`,
    );
  });

  test("is kept as plain data", () => {
    const { task, bench } = lookedAt("dial-heavy");
    const named = { ...task.trouble, size: task.trouble.size + 1 };
    const mark = markDiagnosis(task.trouble, named, bench.log);
    const counts = { tries: 1, measurements: 4 };
    const result = troubleResult({ task, seed: 5, pool: TROUBLE_KINDS, named, mark, counts, time_ms: 1000 });
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
    expect(result).toMatchObject({
      profile: "three-wheel",
      isKindRight: true,
      isSizeWithin: false,
      points: 1,
      tries: 1,
    });
    expect(result.sizeError).toBeCloseTo(1, 9);
  });
});

test("full help walks through every way of looking, and then says to read what there is", () => {
  const task = drawTrouble(ENCODER, ["pause-short"], 3);
  const bench = new TroubleBench(task, seededChance(1));
  const told: string[] = [];
  const looks = [
    () => bench.holdAgainstRules(),
    () => bench.turnRound(),
    () => bench.pushPull(),
    () => bench.readMarks(),
    () => bench.pull("left"),
    () => bench.readCam("left"),
    () => bench.readCam("right"),
    () => bench.dial([]),
    () => bench.dial([1]),
    () => bench.dial([], 20),
  ];
  for (const look of looks) {
    told.push(nextLook(task.card, bench.log));
    look();
  }
  told.push(nextLook(task.card, bench.log));
  expect(new Set(told).size).toBe(looks.length + 1);
  expect(told.at(-1)).toMatch(/^Read what you have/);
});
