/** Middle of the band that closes round the dial as the lock opens: outside the index. */
const RADIUS = 249.3;

/** The lock has opened: a band goes once round the ring and stays there while the bolt is back. */
export function OpenRing() {
  return (
    <circle
      className="dial-open-ring fill-none stroke-accent"
      strokeWidth={6.4}
      strokeDasharray="100"
      r={RADIUS}
      pathLength={100}
      transform="rotate(-90)"
    />
  );
}
