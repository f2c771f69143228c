/** What can be wrong with the board of an electronic lock. */
export const BOARD_FAULTS = [
  "battery-missing",
  "battery-reversed",
  "fuse-blown",
  "cable-out",
  "encoder-not-found",
  "board-harmed",
] as const;

/** What can be wrong with a lock that is put together. */
export const FIT_FAULTS = [
  "ring-off-center",
  "ring-loose",
  "rubs",
  "gap-wide",
  "wrong-keyway",
  "key-not-seated",
  "key-screw-loose",
  "key-screw-stripped",
  "key-screw-unsecured",
  "end-play",
  "dial-heavy",
  "spindle-short",
  "spindle-long",
  "spindle-bent",
  "locker-astray",
  "body-by-one-screw",
  "strike-missing",
  "strike-by-one-screw",
  "bolt-binds",
  "cover-off",
  ...BOARD_FAULTS,
] as const;

/** One of them. */
export type FitFault = (typeof FIT_FAULTS)[number];
