import type { ReactElement } from "react";

/** One word of the trade, or of this trainer. */
export interface Word {
  /** Its place in an address: lower case, with hyphens. */
  readonly id: string;
  readonly term: string;
  /** One or two plain sentences. */
  readonly text: string;
  readonly picture?: ReactElement;
}

/** Words that belong together. */
export interface WordGroup {
  readonly id: string;
  readonly title: string;
  readonly words: readonly Word[];
}
