import type { TroubleResult } from "../../handover/trouble/troubleResult";
import type { JobEnd } from "./jobNote";

function missedOf({ isKindRight, truth, named, points, isSizeWithin }: TroubleResult): string[] {
  if (!isKindRight) return [named.kind === truth.kind ? "wrong-place" : "not-named"];
  return [...(points === 0 ? ["not-looked"] : []), ...(isSizeWithin ? [] : ["size"])];
}

/** What a diagnosis has come to. */
export function troubleEnd(result: TroubleResult): JobEnd {
  const { profile: _profile, time_ms: _time, pool, ...rest } = result;
  return { kind: "trouble", missed: missedOf(result), details: { ...rest, pool: [...pool] } };
}
