import { againAct, type HandAct, newAct } from "../../../hand/handActs";
import type { TroubleSession } from "./troubleSession";

/** The ways to begin anew; their buttons are with the other settings. */
export const troubleActs = (session: TroubleSession): readonly HandAct[] => [
  { ...againAct(() => session.again(), "begins again with this lock"), label: "Same again", place: "elsewhere" },
  { ...newAct("Another", "takes another lock", () => session.another()), place: "elsewhere" },
];
