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
      <g className="dial-cut-lit" transform={`translate(0.5 1.3) ${turned}`}>
        {children}
      </g>
      <g className="dial-cut-shaded" transform={`translate(-0.4 -1.2) ${turned}`}>
        {children}
      </g>
      <g transform={turned}>{children}</g>
    </>
  );
}
