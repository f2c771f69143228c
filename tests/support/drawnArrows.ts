import type { AnyEventObject, AnyMachineSnapshot, AnyStateMachine } from "xstate";

/**
 * Arrows as a chart's source draws them, by the chart's own object for each: a state, an event, and which of its choices
 * where it has several. What takes none of them is found by deleting the ones taken.
 */
export function drawnArrows(machine: AnyStateMachine): Map<unknown, string> {
  const nodes = [machine.root, ...Object.values(machine.states)];
  return new Map(
    nodes.flatMap((node) =>
      [...node.transitions].flatMap(([type, choices]) =>
        choices.map(
          (choice, k) => [choice, `${node.key} by ${type}${choices.length > 1 ? ` #${k + 1}` : ""}`] as const,
        ),
      ),
    ),
  );
}

/** Arrows as drawn that no step takes. One that keeps an event from having any effect (`"a": {}`) is always among them. */
export function arrowsLeft(
  machine: AnyStateMachine,
  steps: readonly { readonly from: unknown; readonly event: AnyEventObject }[],
): readonly string[] {
  const left = drawnArrows(machine);
  for (const { from, event } of steps) {
    for (const one of machine.getTransitionData(from as AnyMachineSnapshot, event) ?? []) left.delete(one);
  }
  return [...left.values()];
}
