import type { Situation } from "../../../../handover/run/rules/situation";
import { SmallScene } from "./ScenePicture";
import { stripWords } from "./stripWords";

interface StateStripProps {
  readonly situation: Situation;
  /** What is wrong at the door; empty where nothing is, or in a sitting, which does not tell it. */
  readonly sign: string;
}

/**
 * Door and states in two lines of fixed height, in view wherever a phone's page is scrolled. The list below the acts
 * says the same and more, so a screen reader needs only that.
 */
export function StateStrip({ situation, sign }: StateStripProps) {
  const [lock, rest] = stripWords(situation, sign);
  return (
    <div
      className="run-strip sticky z-4 top-0 grid grid-cols-[62px_minmax(0,1fr)] content-center gap-x-4 h-[56px] -mx-4 px-4 border-y border-y-hair bg-plate text-small print:hidden"
      aria-hidden="true"
      data-alarm={sign === "" ? undefined : sign}
    >
      <SmallScene situation={situation} />
      <p className="run-strip-line overflow-hidden text-ellipsis whitespace-nowrap">{lock}</p>
      <p className="run-strip-line overflow-hidden text-ellipsis whitespace-nowrap">{rest}</p>
    </div>
  );
}
