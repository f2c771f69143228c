/** The regions of the handover's chart, and the states of each; the first is where a run begins. */
export const REGIONS = {
  /** The lock on its door: as it came, in parts, or as whoever fitted it says it is fitted. */
  fit: ["asFound", "apart", "faultless", "faulty"],
  /** Whether every check of the fit was made since a part was last moved. */
  fitChecks: ["unmade", "made"],
  door: ["open", "shut"],
  /** A spring bolt: thrown it latches the door by itself. Only spun off do the wheels stand out of line. */
  bolt: ["thrown", "spunOff", "retracted"],
  holdback: ["off", "on"],
  /** How far the holdback has been shown to whoever takes over. */
  shown: ["neither", "set", "bothWays"],
  mounting: ["unchecked", "inRange", "outOfRange", "authorized"],
  ring: ["loose", "aligned"],
  /** `byRing`: a wheel pack learns no zero; its index stands true when the ring does. */
  zero: ["notSet", "rightSet", "leftSet", "bothSet", "byRing"],
  /** The lock as it came. */
  shippedTry: ["untried", "tried"],
  combination: ["shipped", "ownTrue", "ownOff", "spoiled"],
  /** Whether the combination as written opens the lock as it is now, where the lock itself was tried. */
  asWritten: ["unknown", "opens", "useless"],
  /** Whether the rules of the lock allow the combination chosen. */
  rules: ["notChosen", "kept", "broken"],
  /** Proofs of the own combination with the door open, in a row. */
  proofs: ["none", "once", "twice", "thrice"],
  second: ["unproved", "proved"],
  inside: ["nobody", "able", "unable"],
  wayOut: ["unchecked", "free", "blocked"],
  /** The door has been shut with an observer inside who can open. */
  observed: ["notYet", "done"],
  outside: ["unproved", "proved"],
  escape: ["free", "shutIn"],
  entry: ["free", "lockedOut"],
  record: ["unwritten", "written"],
} as const;

/** A parallel region of the chart. */
export type Region = keyof typeof REGIONS;

/** Where every region stands: the whole of door, lock, people and paper. */
export type Situation = { readonly [R in Region]: (typeof REGIONS)[R][number] };

/** A state of a region, such as "door.open". */
export type Place = { [R in Region]: `${R}.${(typeof REGIONS)[R][number]}` }[Region];
