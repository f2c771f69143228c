import type { Snapshot } from "xstate";
import { FRESH, type SittingBreak, type SittingContext } from "../../../drill/sitting/sittingMemory";

/** Breaks of one kind that were counted and not listed. */
function unlisted(kind: SittingBreak["kind"], count: number, { breaks, openBreak }: SittingContext): SittingBreak[] {
  const listed = [...breaks, ...(openBreak === null ? [] : [openBreak])].filter((one) => one.kind === kind).length;
  return Array.from({ length: Math.max(0, count - listed) }, () => ({ kind, at_ms: 0, length_ms: null }));
}

/**
 * A persisted chart, with what an earlier version did not remember: version 0.2.0 counted pauses and reloads and kept no
 * list of them, so those stand in the list with a length that is not known.
 */
export function keptChart(snapshot: unknown): Snapshot<unknown> {
  const kept = snapshot as { readonly context: Partial<SittingContext> };
  const context = { ...FRESH, ...kept.context };
  const { pauses, interruptions, breaks } = context;
  const before = [...unlisted("pause", pauses, context), ...unlisted("reload", interruptions, context)];
  return { ...kept, context: { ...context, breaks: [...before, ...breaks] } } as unknown as Snapshot<unknown>;
}
