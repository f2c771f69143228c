import type { ReactNode } from "react";

interface EngravedProps {
  /** How the dial is turned, as a transform. */
  readonly turned: string;
  readonly children: ReactNode;
}

/** Cut into what turns: the edges of the cuts catch the light where it falls, however the dial is turned. */
export function Engraved({ turned, children }: EngravedProps) {
  return (
    <>
      <g className="dial-turned dial-cut-lit" transform={turned}>
        {children}
      </g>
      <g className="dial-turned dial-cut-shaded" transform={turned}>
        {children}
      </g>
      <g className="dial-turned" transform={turned}>
        {children}
      </g>
    </>
  );
}
