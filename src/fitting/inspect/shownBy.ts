import type { FitCheck } from "../fitCheck";
import type { FitFault } from "../fitFault";

/** The checks that can show a fault; no other does. */
export const SHOWN_BY: Readonly<Record<FitFault, readonly FitCheck[]>> = {
  "ring-off-center": ["marks"],
  "ring-loose": ["screws"],
  // A dial that touches only when it is pushed does not scrape as it is turned.
  rubs: ["turn-round", "push-pull", "feelers"],
  "gap-wide": ["feelers"],
  "wrong-keyway": ["zero"],
  "key-not-seated": ["key"],
  "key-screw-loose": ["key"],
  "key-screw-stripped": ["key"],
  "key-screw-unsecured": ["key"],
  "end-play": ["push-pull"],
  "dial-heavy": ["turn-round"],
  "spindle-short": ["depth"],
  "spindle-long": ["depth"],
  "spindle-bent": ["rim"],
  "locker-astray": ["wheels", "key"],
  "body-by-one-screw": ["screws"],
  "strike-missing": ["bolt"],
  "strike-by-one-screw": ["screws"],
  "bolt-binds": ["bolt"],
  "cover-off": ["cover"],
  "battery-missing": ["wires"],
  "battery-reversed": ["wires"],
  "fuse-blown": ["wires"],
  "cable-out": ["wires"],
  "encoder-not-found": ["self-check"],
  "board-harmed": ["self-check"],
};
