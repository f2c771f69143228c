import { useCallback, useEffect, useRef, useState } from "react";
import type { Milliseconds } from "../../lock/dial";
import type { Playback } from "./playback";

/** A replay and its controls; `playback` is null while the bench is live. */
export interface PlaybackControls {
  readonly playback: Playback | null;
  readonly playhead_ms: Milliseconds | null;
  readonly isPlaying: boolean;
  /** Goes into the replay and plays from the playhead, or from the start when it is at the end. */
  play(): void;
  pause(): void;
  scrub(time_ms: Milliseconds): void;
  /** Goes into the replay of a recording that was brought along, at its start. */
  enter(playback: Playback): void;
  /** Leaves the replay. */
  leave(): void;
}

/**
 * Plays recordings on screen.
 *
 * @param make - sets up the playback of what is to be replayed
 */
export function usePlayback(make: () => Playback): PlaybackControls {
  const [playback, setPlayback] = useState<Playback | null>(null);
  const [playhead, setPlayhead] = useState(0);
  const [isPlaying, setPlaying] = useState(false);
  // Where playing begins: read by the effect, which itself moves the playhead on.
  const from = useRef(0);
  from.current = playhead;

  useEffect(() => {
    if (!isPlaying || playback === null) return;
    let frame = 0;
    let before = performance.now();
    let at = from.current >= playback.duration_ms ? 0 : from.current;
    const step = (now: number) => {
      at += Math.max(0, now - before);
      before = now;
      playback.goTo(at);
      setPlayhead(Math.min(at, playback.duration_ms));
      if (at >= playback.duration_ms) setPlaying(false);
      else frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [isPlaying, playback]);

  const ready = () => {
    const ready = playback ?? make();
    setPlayback(ready);
    return ready;
  };
  return {
    playback,
    playhead_ms: playback === null ? null : playhead,
    isPlaying,
    play: () => {
      ready();
      setPlaying(true);
    },
    pause: () => setPlaying(false),
    scrub: (time_ms) => {
      setPlaying(false);
      ready().goTo(time_ms);
      setPlayhead(time_ms);
    },
    enter: (brought) => {
      setPlaying(false);
      setPlayback(brought);
      setPlayhead(0);
    },
    leave: useCallback(() => {
      setPlaying(false);
      setPlayback(null);
      setPlayhead(0);
    }, []),
  };
}
