import type { Graduations } from "../../lock/dial";

/** An estimate beside the truth, in a sentence. @param said, was - graduations, without sign */
export function estimateSentence(said: Graduations, was: Graduations): string {
  const off = was - said;
  const words =
    Math.abs(off) < 0.05 ? "as you felt it" : `${Math.abs(off).toFixed(1)} ${off > 0 ? "more" : "less"} than you felt`;
  return `You entered ${said.toFixed(1)} graduations. Your worst stop was ${was.toFixed(1)} off, ${words}.`;
}
