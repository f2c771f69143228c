import type { SourceKind } from "../../../realdial/sources/sourceKinds";

/** What one should know of a source before one chooses it. */
interface SourceLine {
  /** What a person needs for it. */
  readonly needs: string;
  /** What it cannot do, whatever its steps; null where there is nothing else. */
  readonly limits: string | null;
  /** Whether it has numbers of its own to stop at. */
  readonly hasNumbers: boolean;
  /** What one should know of its steps where most of its kind are coarse, "" where its limits say it; null where most are fine. */
  readonly coarseSteps: string | null;
  /** Whether the page on building says how to make it. */
  readonly isBuilt: boolean;
}

/** Each device that a hand can turn. */
export const SOURCE_LINES: Readonly<Record<Exclude<SourceKind, "screen">, SourceLine>> = {
  encoder: {
    needs: "An encoder and a small board that you wire yourself, and a USB cable. A desktop browser with serial ports.",
    limits: "It does not know where its 0 is. You set 0 here, and again each time the board starts.",
    hasNumbers: false,
    coarseSteps: null,
    isBuilt: true,
  },
  "printed-dial": {
    needs: "Two printed sheets, a jar lid, and a camera that looks down on them.",
    limits: "It needs light and a free view. If your hand covers the disc, it asks you to come back to a number.",
    hasNumbers: true,
    coarseSteps: null,
    isBuilt: true,
  },
  "ordinary-dial": {
    needs: "A practice lock whose combination you may record, and a camera fixed in front of its dial.",
    limits:
      "It needs light and clear marks. It cannot follow a dial without numbers, or one that your hand covers by half.",
    hasNumbers: true,
    coarseSteps: null,
    isBuilt: false,
  },
  phone: {
    needs: "The phone that shows this page, fixed on a knob.",
    limits: "It drifts a little, and the screen turns with your hand.",
    hasNumbers: false,
    coarseSteps: null,
    isBuilt: false,
  },
  midi: {
    needs: "A MIDI controller with a knob that turns without end.",
    limits: null,
    hasNumbers: false,
    coarseSteps: "Its steps are too large to judge a stop: 1 to 4 graduations.",
    isBuilt: false,
  },
  gamepad: {
    needs: "A game controller with a spinner that turns without end, or with a stick.",
    limits: "A thumb on a stick does not stop as a hand on a dial does.",
    hasNumbers: false,
    coarseSteps: "",
    isBuilt: false,
  },
  "knob-keys": {
    needs: "A keyboard with a knob, or a volume knob.",
    limits: "A volume knob may change the volume as well.",
    hasNumbers: false,
    coarseSteps: "Its steps are too large to judge a stop.",
    isBuilt: false,
  },
};

/** What holds of a kind of device; of none, what holds of a bare knob. */
export const sourceLine = (kind: SourceKind): SourceLine => SOURCE_LINES[kind === "screen" ? "encoder" : kind];
