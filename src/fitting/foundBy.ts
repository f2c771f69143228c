import type { FitCheck } from "./fitCheck";
import type { FitFault } from "./fitFaultCode";

/**
 * The checks that tell a fault: any of them where the fault shows in several ways, such as a rub; those of the electronics
 * together, since a silent board says nothing before its wires are known to be right. A look from the side tells no fault: it
 * shows what the gap makes an eye read wrong, and the feeler gauge tells the gap.
 */
export const FOUND_BY: Readonly<Record<FitFault, readonly FitCheck[]>> = {
  "ring-off-center": ["marks"],
  "ring-loose": ["screws"],
  rubs: ["turn-round", "push-pull"],
  "gap-wide": ["feelers"],
  "wrong-keyway": ["zero"],
  "key-not-seated": ["key", "nose"],
  "key-screw-loose": ["key"],
  "key-screw-stripped": ["key"],
  "key-screw-unsecured": ["key"],
  "end-play": ["push-pull"],
  "dial-heavy": ["turn-round"],
  "spindle-short": ["depth"],
  "spindle-long": ["depth"],
  "spindle-bent": ["rim"],
  "locker-astray": ["key", "wheels"],
  "body-by-one-screw": ["screws"],
  "strike-missing": ["bolt"],
  "strike-by-one-screw": ["screws"],
  "bolt-binds": ["bolt"],
  "cover-off": ["cover"],
  "battery-missing": ["wires"],
  "battery-reversed": ["wires"],
  "fuse-blown": ["wires"],
  "cable-out": ["wires"],
  "encoder-not-found": ["wires", "self-check"],
  "board-harmed": ["wires", "self-check"],
};
