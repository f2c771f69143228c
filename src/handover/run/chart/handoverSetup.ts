import { assign, setup } from "xstate";
import type { HandoverFault } from "../rules/faultTriggers";
import type { HandoverEvent } from "../rules/handoverEvent";
import type { HandoverContext } from "./chartGuards";

/** What all regions of the handover's chart are made with. */
export const handover = setup({
  types: { context: {} as HandoverContext, events: {} as HandoverEvent },
  actions: {
    note: assign(({ context }, code: HandoverFault) => ({ faults: [...context.faults, code] })),
  },
});
