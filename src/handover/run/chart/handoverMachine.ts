import type { Profile } from "../../../lock/profile";
import { all } from "../rules/condition";
import { FAULT_AT_END, FAULT_TRIGGERS, type FaultTrigger, type HandoverFault } from "../rules/faultTriggers";
import { IS_COMPLETE } from "../rules/proofs";
import { ifGiven, ifUnhindered, WORKING, when } from "./chartGuards";
import { bolt, door, entry, holdback, shown, wayOutNeeded } from "./doorRegions";
import { fitChecks, fitOfDoor } from "./fitRegions";
import { handover } from "./handoverSetup";
import { asWritten, combination, ring, rules, shippedTry, zeroOf } from "./lockRegions";
import { inside, mounting, wayOut } from "./peopleRegions";
import { observed, outside, proofs, record, second } from "./proofRegions";

/** One watcher a fault: it changes nothing, and notes its fault when it sees it made. */
const watcher = ({ code, on, given: fields = {}, when: condition }: FaultTrigger & { readonly code: HandoverFault }) =>
  handover.createStateConfig({
    on: Object.fromEntries(
      on.map((type) => [
        type,
        { guard: ifUnhindered(type, ifGiven(fields, condition)), actions: { type: "note" as const, params: code } },
      ]),
    ),
  });

/**
 * The handover as a chart of parallel regions: door, bolt, holdback, lock, people and paper, each as it stands.
 *
 * Nothing stops a wrong order: a watcher notes each fault, and what follows from it follows from where the regions
 * stand. Only signing off asks for everything: `handedOver` is reached with every required proof, or not at all. It
 * keeps no clock and moves no lock; whoever runs it sends finished facts.
 *
 * @param kind - a wheel pack has no zero of its own to set; its ring's alignment stands for it
 * @param isToFit - whether the lock's parts are in the tray as the run begins
 */
export function handoverMachine(kind: Profile["kind"], isToFit = false) {
  return handover.createMachine({
    id: "handover",
    context: { faults: [] },
    initial: WORKING,
    states: {
      working: {
        type: "parallel",
        on: {
          "duty.signed": [
            {
              guard: when(all(IS_COMPLETE, FAULT_AT_END.when)),
              target: "handedOver",
              actions: { type: "note", params: FAULT_AT_END.code },
            },
            { guard: when(IS_COMPLETE), target: "handedOver" },
          ],
        },
        states: {
          ...{
            fit: fitOfDoor(isToFit),
            fitChecks,
            door,
            bolt,
            holdback,
            shown,
            mounting,
            ring,
            zero: zeroOf(kind),
            shippedTry,
            combination,
            asWritten,
            rules,
          },
          ...{ proofs, second, inside, wayOut, observed, outside, escape: wayOutNeeded, entry, record },
          watch: {
            type: "parallel",
            states: Object.fromEntries(FAULT_TRIGGERS.map((trigger) => [trigger.code, watcher(trigger)])),
          },
        },
      },
      handedOver: { type: "final" },
    },
  });
}
