import { assign } from "xstate";
import type { dialingMachine } from "../../src/dialing/dialingMachine";

/** The dialing chart without what it tells others: `@xstate/test` walks no chart that emits. States and arrows are the same. */
export const pureForm = (machine: ReturnType<typeof dialingMachine>) =>
  machine.provide({ actions: { tellOpened: assign({}), tellRefused: assign({}) } });
