import { type RefObject, useCallback, useEffect, useRef } from "react";
import type { DrawnDial, TurnDial } from "./dialSource";
import { DIAL_SOURCES } from "./dialSources";

interface SourcedDial extends DrawnDial {
  readonly perTurn: number;
  readonly onTurn: TurnDial;
}

/**
 * Lets every source turn a dial for as long as it is on the screen.
 *
 * A source begins once: it goes on through every redraw, and speaks to the screen as it was drawn last.
 *
 * @returns the one way by which all of them turn it
 */
export function useSources(place: RefObject<HTMLElement | null>, now: SourcedDial): TurnDial {
  const { perTurn } = now;
  const drawn = useRef(now);
  drawn.current = now;
  const screenMoves = useRef(0);
  const turn = useCallback<TurnDial>((by, at, source) => {
    if (by === 0) return;
    if (source === undefined) screenMoves.current++;
    drawn.current.onTurn(by, at, source);
  }, []);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const dial = {
      element,
      perTurn,
      position: () => drawn.current.position,
      drawn: () => drawn.current,
      screenMoves: () => screenMoves.current,
    };
    const ends = DIAL_SOURCES.map(({ start }) => start?.(dial, turn));
    return () => {
      for (const end of ends) end?.();
    };
  }, [place, perTurn, turn]);
  return turn;
}
