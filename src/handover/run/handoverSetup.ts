import { assign, setup } from "xstate";
import type { HandoverContext } from "./chart/chartGuards";
import type { HandoverFault } from "./faultTriggers";
import type { HandoverEvent } from "./handoverEvent";

/** What all regions of the handover's chart are made with. */
export const handover = setup({
  types: { context: {} as HandoverContext, events: {} as HandoverEvent },
  actions: {
    note: assign(({ context }, code: HandoverFault) => ({ faults: [...context.faults, code] })),
  },
});
