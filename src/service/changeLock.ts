import { screwAfter } from "../fitting/keySeat";
import { CENTERED } from "../fitting/offCenter";
import type { Instructions } from "./papers";
import type { ServicedLock } from "./servicedLock";
import type { VisitChange } from "./visitAct";
import type { WrongThing } from "./wrongThing";

type Of<Type extends VisitChange["type"]> = Extract<VisitChange, { readonly type: Type }>;
type Changes = {
  readonly [Type in VisitChange["type"]]: (
    lock: ServicedLock,
    act: Of<Type>,
    instructions: Instructions,
  ) => Partial<ServicedLock>;
};

const screwed = ({ assembly }: ServicedLock, screw: "loose" | "firm" | "stripped") => ({
  ...assembly,
  key: assembly.key === null ? null : { ...assembly.key, screw },
});

const CHANGES: Changes = {
  "screw.tightened": (lock, { torque_Nm }) => {
    const { screwHolds_Nm, screwStrips_Nm } = lock.toFit.sizes;
    const screw = screwAfter(torque_Nm, [screwHolds_Nm, screwStrips_Nm]);
    const isGone = lock.assembly.key?.screw === "stripped" || screw === "out";
    return { assembly: screwed(lock, isGone ? "stripped" : screw) };
  },
  // A new key is in its seat, its screw only just in.
  "key.replaced": (lock) => ({
    worn: 0,
    assembly: lock.assembly.key?.screw === "stripped" ? lock.assembly : screwed(lock, "loose"),
  }),
  "bearing.replaced": ({ soil, gummed }) => ({
    soil: { ...soil, dryBearing: 0 },
    gummed: gummed.filter((at) => at !== "bearing"),
  }),
  "ring.cleaned": ({ soil }) => ({ soil: { ...soil, dirt: 0 } }),
  "paint.removed": ({ soil }) => ({ soil: { ...soil, paint: 0 } }),
  "ring.centered": ({ assembly }) => ({
    assembly: { ...assembly, ring: assembly.ring === null ? null : { ...assembly.ring, offset: CENTERED } },
  }),
  // Where it must stay dry, dirt is what makes it drag; else the lack of what belongs there.
  "bolt.wiped": ({ boltDrags }, _, { lubrication }) => ({ boltDrags: boltDrags && lubrication.bolt !== null }),
  lubricated: ({ soil, gummed, boltDrags }, { at, with: what }, { lubrication }) => ({
    boltDrags: boltDrags && at !== "bolt",
    // Whatever is put on makes a dry bearing run for now; what does not belong there gums up.
    soil: at === "bearing" ? { ...soil, dryBearing: 0 } : soil,
    gummed: lubrication[at] === what ? gummed : [...new Set([...gummed, at])],
  }),
  "batteries.replaced": ({ cells }, { which, cells: type }) => ({
    cells: cells.map((cell, k) => (which === "set" || k === 0 ? { type, months: 0, used: 0 } : cell)),
  }),
};

/** The lock after a change. */
export const changed = (lock: ServicedLock, act: VisitChange, instructions: Instructions): ServicedLock => ({
  ...lock,
  ...(CHANGES[act.type] as (lock: ServicedLock, act: VisitChange, by: Instructions) => Partial<ServicedLock>)(
    lock,
    act,
    instructions,
  ),
});

/** What each change is for, but lubricant, which depends on its place. Wiping a ring dry never hurts: it is for nothing in particular. */
export const MEANT_FOR: Readonly<Record<Exclude<VisitChange["type"], "lubricated">, readonly WrongThing[] | null>> = {
  "screw.tightened": ["key-loose"],
  "key.replaced": ["key-worn"],
  "bearing.replaced": ["bearing-dry", "gummed"],
  "ring.cleaned": null,
  "paint.removed": ["ring-painted"],
  "bolt.wiped": ["bolt-drags"],
  "ring.centered": ["ring-off-center"],
  "batteries.replaced": ["batteries-low", "batteries-old", "batteries-mixed", "batteries-wrong-type"],
};
