import { expect, test } from "vitest";
import { type Assembly, inTheTray } from "../../src/fitting/assembly";
import { NEW_BOARD } from "../../src/fitting/board";
import { fitOf } from "../../src/fitting/fit";
import { fitFaults } from "../../src/fitting/fitFault";
import type { FitFault } from "../../src/fitting/fitFaultCode";
import { stageOf } from "../../src/fitting/fitStage";
import type { FittingAct, Hindrance } from "../../src/fitting/fittingAct";
import { CENTERED } from "../../src/fitting/offCenter";
import { putTogether } from "../../src/fitting/putTogether";
import { after, ELECTRONIC_ACTS, goodActs, trainingLock } from "../support/fitter";
import { followed } from "../support/helpFollowed";

const lock = trainingLock(30);
/** What a good fit takes, each act once; then what spoils one. */
const GOOD = goodActs(lock);
const SPOILING: readonly FittingAct[] = [
  { type: "dial.screwed", by: 25 },
  { type: "key.screwed", torque_Nm: 2 },
  { type: "locker.dropped", at: "spindle-thread" },
];

interface Place {
  readonly assembly: Assembly;
  /** Which acts are still to be done, a bit each. */
  readonly left: number;
}

interface End extends Place {
  /** What stops the acts that are left. */
  readonly stoppedBy: readonly Hindrance[];
}

/** Where every order of some acts ends: none is left, or all that are left are stopped. An act that is stopped can come later. */
function endsOf(acts: readonly FittingAct[], from = inTheTray(lock.sizes.spindle_mm)): readonly End[] {
  const open: Place[] = [{ assembly: from, left: 2 ** acts.length - 1 }];
  const seen = new Set<string>();
  const ends: End[] = [];
  for (let now = open.pop(); now !== undefined; now = open.pop()) {
    const { assembly, left } = now;
    const key = `${left} ${JSON.stringify(assembly)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const tried = acts.flatMap((act, k) => ((left >> k) % 2 === 1 ? [{ k, ...putTogether(assembly, act, lock) }] : []));
    const stoppedBy = tried.flatMap(({ hindrance }) => (hindrance === null ? [] : [hindrance]));
    if (stoppedBy.length === tried.length) ends.push({ assembly, left, stoppedBy });
    for (const next of tried) {
      if (next.hindrance === null) open.push({ assembly: next.assembly, left: left - 2 ** next.k });
    }
  }
  return ends;
}

/** What is wrong with a lock that is together, or null. */
function wrongWith(assembly: Assembly): readonly FitFault[] | null {
  const fit = fitOf(assembly, lock);
  return fit === null ? null : fitFaults(fit, assembly, lock.sizes);
}

const GOOD_ENDS = endsOf(GOOD);
const ALL_ENDS = endsOf([...GOOD, ...SPOILING]);

test("the acts of a good fit in any order end with nothing wrong, with faults that have names, or with what is in the way", () => {
  expect(GOOD_ENDS.length).toBeGreaterThan(200);
  for (const { assembly, left, stoppedBy } of GOOD_ENDS) {
    const wrong = wrongWith(assembly);
    expect(stageOf(assembly, lock)).toBe(wrong === null ? "apart" : "closed");
    // An act that was left out shows: as a fault, or in the parts that are still in the tray.
    if (left === 0) expect(wrong).toEqual([]);
    else expect(wrong ?? stoppedBy).not.toEqual([]);
  }
  expect(GOOD_ENDS.some(({ left }) => left === 0)).toBe(true);
  const names = new Set(GOOD_ENDS.flatMap(({ assembly }) => wrongWith(assembly) ?? []));
  expect([...names].sort()).toEqual([
    "body-by-one-screw",
    "end-play",
    "gap-wide",
    "key-not-seated",
    "key-screw-loose",
    "key-screw-unsecured",
    "ring-loose",
    "rubs",
  ]);
});

test("with acts that spoil parts among them, every end is named, and whatever is not spent is taken apart and fitted right", () => {
  expect(ALL_ENDS.length).toBeGreaterThan(2000);
  expect(new Set(ALL_ENDS.map(({ assembly }) => stageOf(assembly, lock)))).toEqual(
    new Set(["apart", "closed", "spent"]),
  );
  for (const { assembly, left, stoppedBy } of ALL_ENDS) {
    if (stageOf(assembly, lock) === "spent") continue;
    const isWhole = left % 2 ** GOOD.length === 0;
    if (!isWhole) expect(wrongWith(assembly) ?? stoppedBy).not.toEqual([]);
    const { now, end } = followed(assembly, lock);
    expect(end).toBe("declare");
    expect(wrongWith(now)).toEqual([]);
  }
});

/** An electronic lock whose dial is fitted, its board untouched and its cover off. */
const BARE_BOARD = after(
  inTheTray(lock.sizes.spindle_mm, CENTERED, NEW_BOARD),
  GOOD.filter(({ type }) => type !== "cover.put"),
  lock,
);
/** What chance does to a touch without the strap: nothing, an unsteady board, a dead one. */
const LUCKS = [0.99, 0.3, 0] as const;
const WRONG_AT_THE_BOARD: readonly FittingAct[] = [
  { type: "strap.taken" },
  { type: "battery.connected", leads: "reversed", luck: 0 },
  { type: "battery.disconnected", luck: 0 },
  { type: "cable.pulled", luck: 0 },
  { type: "fuse.replaced", luck: 0 },
];
const BOARD_ACTS = [...ELECTRONIC_ACTS, ...WRONG_AT_THE_BOARD, { type: "cover.put" } as const];

test.each(LUCKS)("the acts on a board in any order, luck %f: every end is named, and is put right again", (luck) => {
  const ends = endsOf(
    BOARD_ACTS.map((act) => ("luck" in act ? { ...act, luck } : act)),
    BARE_BOARD,
  );
  expect(ends.length).toBeGreaterThan(20);
  const wholly = ends.map(({ assembly }) => wrongWith(assembly));
  expect(wholly).not.toContain(null);
  for (const { assembly } of ends) {
    expect(["coupled", "closed"]).toContain(stageOf(assembly, lock));
    const { board } = assembly;
    const isRight = board?.leads === "right" && board.hasCable && board.foundEncoder && !board.isFuseBlown;
    // Nothing wrong is said of a lock only where its board is whole, wired and under its cover.
    expect(wrongWith(assembly)?.length === 0).toBe(isRight && board.harm === "none" && assembly.hasCover);
    const { now, end } = followed(assembly, lock);
    expect(end).toBe("declare");
    expect(wrongWith(now)).toEqual([]);
  }
  const names = new Set(wholly.flat());
  for (const name of ["battery-missing", "cable-out", "battery-reversed", "fuse-blown"]) expect(names).toContain(name);
  expect(names.has("board-harmed")).toBe(luck < lock.sizes.staticHarms);
});
