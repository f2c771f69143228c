import { FIT_FAULTS } from "../../src/fitting/fitFaultCode";
import { firstOrderError, readingError } from "../../src/fitting/offCenter";
import { kindsFor } from "../../src/handover/trouble/drawTrouble";
import { TROUBLE_KINDS } from "../../src/handover/trouble/trouble";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { seededChance } from "../../src/statistics/chance";
import { drawnWith, locksWith, namedRight } from "../support/fitTrial";
import { CONFIDENCE, measureOften, PER_TURN, RADIUS_MM } from "../support/ringMeasurements";
import { troubleTrial } from "../support/troubleTrial";

/** Figures of the fitting's checks from outside: the estimate of an offset, what a technician names right, and the first order. */

const MEASUREMENTS = 10_000;
const RUNS = 1000;
const SPREADS = [0.02, 0.05, 0.2];
const TRUTHS = [
  { name: "none", size_mm: 0, degrees: 0 },
  { name: "small, to the top", size_mm: 0.1, degrees: 0 },
  { name: "usual, right and down", size_mm: 0.6, degrees: 120 },
  { name: "large, left", size_mm: 1.5, degrees: 270 },
  { name: "large, left and up", size_mm: 1.5, degrees: 315 },
];

const say = (...lines: readonly string[]) => process.stdout.write(`${lines.join("\n")}\n`);
const ring = (size_mm: number, degrees: number) => {
  const angle = (degrees * Math.PI) / 180;
  return { x_mm: size_mm * Math.sin(angle), y_mm: size_mm * Math.cos(angle) };
};
const both = (x: number, y: number, digits: number) => `${x.toFixed(digits)}, ${y.toFixed(digits)}`;
const percent = (share: number) => (100 * share).toFixed(1);

function sayEstimates(): void {
  say(`${MEASUREMENTS} measurements, 4 places read 3 times; intervals claim ${percent(CONFIDENCE)} of 100`, "");
  say("| offset | spread of a reading | bias x, y (µm) | SD x, y (µm) | held x, y of 100 | both together |");
  say("|---|---:|---:|---:|---:|---:|");
  const chance = seededChance(40);
  for (const { name, size_mm, degrees } of TRUTHS) {
    for (const spread of SPREADS) {
      const truth = { ...ring(size_mm, degrees), turned: 0.2 };
      const { bias_mm, deviation_mm, held, agreed } = measureOften(truth, spread, MEASUREMENTS, chance);
      const bias = both(1000 * bias_mm.x_mm, 1000 * bias_mm.y_mm, 2);
      const deviation = both(1000 * deviation_mm.x_mm, 1000 * deviation_mm.y_mm, 1);
      const intervals = both(100 * held.x, 100 * held.y, 1);
      say(`| ${name}, ${size_mm} mm | ${spread} | ${bias} | ${deviation} | ${intervals} | ${percent(agreed)} |`);
    }
  }
}

function sayFitFaults(): void {
  say("", `| fault of a fit | named right, of ${RUNS} |`, "|---|---:|");
  for (const fault of FIT_FAULTS) {
    const [profile] = locksWith(fault);
    if (profile === undefined) continue;
    say(`| ${fault} | ${namedRight(RUNS, (chance) => drawnWith([fault], profile, chance))} |`);
  }
}

function sayTroubles(): void {
  say("", `| defect of the trouble bench | locks in turn | named right, of ${RUNS} |`, "|---|---:|---:|");
  for (const kind of TROUBLE_KINDS) {
    const locks = SHIPPED_PROFILES.filter((profile) => kindsFor(profile).includes(kind));
    const isRight = (k: number) => {
      const profile = locks[k % locks.length];
      return profile !== undefined && troubleTrial(profile, kind, k + 1).isRight;
    };
    const right = Array.from({ length: RUNS }, (_, k) => k).filter(isRight).length;
    say(`| ${kind} | ${locks.length} | ${right} |`);
  }
}

function sayFirstOrder(): void {
  say("", "| offset | largest error, exact | left of it by the first order |", "|---:|---:|---:|");
  for (const size_mm of [0.1, 0.6, 1.5, 4]) {
    const face = { perTurn: PER_TURN, radius_mm: RADIUS_MM, ring: ring(size_mm, 0), dial: ring(0, 0) };
    const places = Array.from({ length: 10 * PER_TURN }, (_, k) => k / 10);
    const exact = Math.max(...places.map((place) => Math.abs(readingError(face, place, 0))));
    const left = Math.max(
      ...places.map((place) => Math.abs(readingError(face, place, 0) - firstOrderError(face, place, 0))),
    );
    say(`| ${size_mm} mm | ${exact.toFixed(4)} | ${left.toFixed(5)} |`);
  }
}

sayEstimates();
sayFirstOrder();
sayFitFaults();
sayTroubles();
