import type { Assembly, LockerPlace, Screwed } from "../../../fitting/assembly";
import { farthestIn, type LockToFit } from "../../../fitting/fittedLock";
import type { BoardTouch, FittingAct } from "../../../fitting/fittingAct";
import { FITTING } from "../../../fitting/trainingValues";
import type { CautionId } from "./fittingCautions";

/** An act as a button offers it. Where chance has a say, it is named, and the hand does it. */
export interface OfferedAct {
  readonly label: string;
  readonly act: FittingAct | "ring-by-eye" | "ring-by-bushing" | "strike" | { readonly touch: BoardTouch };
}

/** A part, how it stands, what one can do with it as it stands, and what to mind while one does. */
export interface TrayPart {
  readonly name: string;
  readonly stands: (now: Assembly) => string;
  /** What another part stands in the way of is offered too: the act says so. */
  readonly acts: (now: Assembly, lock: LockToFit) => readonly OfferedAct[];
  readonly caution?: (now: Assembly) => CautionId | null;
}

const { ringStep, strikeStep_mm } = FITTING;

const IN_THE_TRAY = "in the tray";
const SCREWS: Readonly<Record<Screwed, string>> = { "by-one": "hangs by one screw", "by-all": "all screws tight" };

const when = (isSo: boolean, ...acts: readonly OfferedAct[]): readonly OfferedAct[] => (isSo ? acts : []);

const BODY: TrayPart = {
  name: "Lock body",
  stands: ({ body }) => (body === null ? IN_THE_TRAY : SCREWS[body]),
  acts: ({ body }) => [
    ...when(body === null, { label: "Hang it by one screw", act: { type: "body.hung" } }),
    ...when(body === "by-one", { label: "Tighten all screws", act: { type: "body.tightened" } }),
    ...when(body !== null, { label: "Take the body off", act: { type: "body.taken" } }),
  ],
  caution: ({ hasCover }) => (hasCover ? null : "weight"),
};

const RING: TrayPart = {
  name: "Ring",
  stands: ({ ring }) => {
    if (ring === null) return IN_THE_TRAY;
    return ring.isTight ? "on, screws tight" : "on, screws loose";
  },
  acts: ({ ring }) => {
    if (ring === null) {
      return [
        { label: "Put it on by eye", act: "ring-by-eye" },
        { label: "Put it on over the bushing", act: "ring-by-bushing" },
      ];
    }
    if (ring.isTight) return [{ label: "Loosen the ring", act: { type: "ring.loosened" } }];
    return [
      { label: `Turn it left ${ringStep} graduations`, act: { type: "ring.turned", by: ringStep } },
      { label: `Turn it right ${ringStep} graduations`, act: { type: "ring.turned", by: -ringStep } },
      { label: "Tighten the ring", act: { type: "ring.tightened" } },
      { label: "Take the ring off", act: { type: "ring.taken" } },
    ];
  },
};

const END = { "as-delivered": "as delivered", sawn: "sawn", dressed: "end filed" } as const;

const SPINDLE: TrayPart = {
  name: "Spindle",
  stands: ({ spindle: { length_mm, end, mark_mm }, spares }) =>
    `${length_mm.toFixed(1)} mm, ${END[end]}${mark_mm === null ? "" : `, marked at ${mark_mm.toFixed(1)} mm`}; ${spares === 0 ? "no spare" : "one spare"} in the tray`,
  // Sawing has a field of its own. With the dial in, a pencil alone reaches the spindle, at the cam's face.
  acts: ({ spindle, spares, dialIn }) => {
    if (dialIn !== null) return [{ label: "Mark it at the cam's face", act: { type: "spindle.marked" } }];
    return [
      ...when(spindle.end === "sawn", { label: "File and chamfer the end", act: { type: "spindle.dressed" } }),
      ...when(spares > 0, { label: "Take the spare spindle", act: { type: "spindle.replaced" } }),
    ];
  },
  caution: ({ dialIn, spindle }) => {
    if (dialIn !== null) return null;
    return spindle.end === "sawn" ? "burr" : "saw";
  },
};

const screwed = (label: string, by: number): OfferedAct => ({ label, act: { type: "dial.screwed", by } });

const DIAL: TrayPart = {
  name: "Dial",
  stands: ({ dialIn }) => (dialIn === null ? IN_THE_TRAY : "screwed into the cam"),
  acts: ({ dialIn, spindle }, lock) => [
    screwed("In until it touches", farthestIn(lock, spindle.length_mm)),
    screwed("In 1 turn", lock.perTurn),
    ...when(
      dialIn !== null,
      screwed("In 10 graduations", 10),
      screwed("In 1 graduation", 1),
      { label: "Take the dial out", act: { type: "dial.taken" } },
      screwed("Out 1 turn", -lock.perTurn),
      screwed("Out 10 graduations", -10),
      screwed("Out 1 graduation", -1),
    ),
  ],
};

/** How hard the key's screw is turned. */
const TURNED = ["lightly", "firmly", "hard"] as const;

const KEY: TrayPart = {
  name: "Key",
  stands: ({ key }) => {
    if (key === null) return IN_THE_TRAY;
    return key.isSeated ? "driven home" : "in the cam";
  },
  acts: ({ key }, { sizes }) =>
    key === null
      ? [{ label: "Insert the key", act: { type: "key.put" } }]
      : [
          ...when(!key.isSeated, { label: "Drive it home", act: { type: "key.driven" } }),
          ...FITTING.torqueParts.map((part, k): OfferedAct => {
            const torque_Nm = part * sizes.screwHolds_Nm;
            return {
              label: `Screw ${TURNED[k]}, ${torque_Nm.toFixed(1)} Nm`,
              act: { type: "key.screwed", torque_Nm },
            };
          }),
          { label: "Remove the key", act: { type: "key.taken" } },
        ],
  caution: ({ key }) => (key?.isSeated === false ? "drive" : null),
};

const LOCKER: Readonly<Record<LockerPlace, readonly [stands: string, label: string]>> = {
  "key-screw": ["on the key's screw", "Drop on the key's screw"],
  "spindle-thread": ["on the spindle's thread", "Drop on the spindle's thread"],
  wheels: ["on the wheels", "Drop on the wheels"],
};
const LOCKER_PLACES: readonly LockerPlace[] = ["key-screw", "spindle-thread", "wheels"];

const THREAD_LOCKER: TrayPart = {
  name: "Thread locker",
  stands: ({ locker }) => (locker.length === 0 ? "none used" : locker.map((at) => LOCKER[at][0]).join(", ")),
  acts: ({ locker, board }) =>
    LOCKER_PLACES.filter((at) => !locker.includes(at) && (at !== "wheels" || board === null)).map((at) => ({
      label: LOCKER[at][1],
      act: { type: "locker.dropped", at },
    })),
  caution: ({ hasCover }) => (hasCover ? null : "locker"),
};

const touch = (label: string, act: BoardTouch): OfferedAct => ({ label, act: { touch: act } });

const BOARD: TrayPart = {
  name: "Board and battery",
  stands: ({ board }) =>
    board === null
      ? "none"
      : [
          board.hasCable ? "cable in" : "cable out",
          board.leads === null ? "no battery" : "battery connected",
          board.isStrapOn ? "strap on" : "strap off",
        ].join(", "),
  acts: ({ board }) => {
    if (board === null) return [];
    return [
      board.isStrapOn
        ? { label: "Take the wrist strap off", act: { type: "strap.taken" } }
        : { label: "Put the wrist strap on", act: { type: "strap.put" } },
      board.hasCable
        ? touch("Pull the encoder's cable", { type: "cable.pulled" })
        : touch("Plug the encoder's cable in", { type: "cable.plugged" }),
      ...when(
        board.leads === null,
        touch("Battery: red lead to plus", { type: "battery.connected", leads: "right" }),
        touch("Battery: red lead to minus", { type: "battery.connected", leads: "reversed" }),
      ),
      ...when(board.leads !== null, touch("Disconnect the battery", { type: "battery.disconnected" })),
      touch("Replace the fuse", { type: "fuse.replaced" }),
      touch("Replace the board", { type: "board.replaced" }),
    ];
  },
  caution: ({ board, hasCover }) => {
    if (board === null || hasCover) return null;
    if (board.leads === null) return "leads";
    return board.isStrapOn ? null : "static";
  },
};

const STRIKE: TrayPart = {
  name: "Strike",
  stands: ({ strike }) => (strike === null ? IN_THE_TRAY : SCREWS[strike.screws]),
  acts: ({ strike }) => {
    if (strike === null) return [{ label: "Hang the strike by one screw", act: "strike" }];
    if (strike.screws === "by-all") return [{ label: "Loosen the strike", act: { type: "strike.loosened" } }];
    return [
      { label: `Strike up ${strikeStep_mm} mm`, act: { type: "strike.moved", by_mm: strikeStep_mm } },
      { label: `Strike down ${strikeStep_mm} mm`, act: { type: "strike.moved", by_mm: -strikeStep_mm } },
      { label: "Tighten the strike", act: { type: "strike.tightened" } },
    ];
  },
  caution: ({ strike }) => (strike === null ? null : "bolt"),
};

const COVER: TrayPart = {
  name: "Cover",
  stands: ({ hasCover }) => (hasCover ? "on" : IN_THE_TRAY),
  acts: ({ hasCover }) => [
    hasCover
      ? { label: "Take the cover off", act: { type: "cover.taken" } }
      : { label: "Put the cover on", act: { type: "cover.put" } },
  ],
  caution: ({ hasCover, board }) => (board?.isStrapOn === false && hasCover ? "static" : null),
};

const ALL: readonly TrayPart[] = [BODY, RING, SPINDLE, DIAL, KEY, THREAD_LOCKER, STRIKE, COVER];
const ELECTRONIC: readonly TrayPart[] = [...ALL.slice(0, -2), BOARD, ...ALL.slice(-2)];

/** The parts of a lock in the order in which they are wisely put on. */
export const partsOf = ({ board }: Assembly): readonly TrayPart[] => (board === null ? ALL : ELECTRONIC);
