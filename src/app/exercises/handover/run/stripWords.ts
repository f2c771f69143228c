import type { Situation } from "../../../../handover/run/rules/situation";

const DOOR = { open: "Door open", shut: "Door shut" } as const;
const BOLT = { thrown: "bolt thrown", spunOff: "bolt thrown, spun off", retracted: "bolt back" } as const;
const INSIDE = { nobody: "nobody inside", able: "1 inside, can open", unable: "1 inside, cannot open" } as const;
const PROOFS = { none: 0, once: 1, twice: 2, thrice: 3 } as const;

/**
 * The state of a door in two short lines: door, bolt and holdback; danger, people and proofs.
 *
 * @param sign - what is wrong at the door; empty where nothing is, or where nothing of it is shown
 */
export function stripWords(situation: Situation, sign: string): readonly [string, string] {
  const { door, bolt, holdback, inside, proofs } = situation;
  const lock = [DOOR[door], BOLT[bolt], ...(holdback === "on" ? ["held back"] : [])];
  const rest = [...(sign === "" ? [] : [sign]), INSIDE[inside], `proved ${PROOFS[proofs]} of 3`];
  return [lock.join(" · "), rest.join(" · ")];
}
