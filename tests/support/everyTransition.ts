import type { AnyEventObject, AnyMachineSnapshot } from "xstate";

/**
 * For `createTestModel`: walk every transition. Left alone it walks to every state, and most arrows stay untested.
 */
export const everyTransition = {
  serializeTransition: (_: AnyMachineSnapshot, event: AnyEventObject | undefined, from?: AnyMachineSnapshot) =>
    event && from ? ` by ${JSON.stringify(event)} from ${JSON.stringify([from.value, from.context])}` : "",
};
