import type { ReactElement } from "react";

/** One word of the trade, or of this trainer. */
export interface Word {
  /** Its place in an address: lower case, with hyphens. */
  readonly id: string;
  readonly term: string;
  /** One or two plain sentences. */
  readonly text: string;
  readonly picture?: ReactElement;
  /** Where one does it, as an address of this app with what is there. */
  readonly place?: { readonly href: string; readonly title: string };
}

/** Words that belong together. */
export interface WordGroup {
  readonly id: string;
  readonly title: string;
  readonly words: readonly Word[];
}
