import { type ReactNode, useEffect, useRef } from "react";

interface LivePictureProps {
  readonly stream: MediaStream;
  /** What lies over it. */
  readonly children: ReactNode;
}

/** The live picture of a camera, no wider than it needs to be. */
export function LivePicture({ stream, children }: LivePictureProps) {
  const place = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const video = place.current;
    if (video === null) return;
    video.srcObject = stream;
    return () => {
      video.srcObject = null;
    };
  }, [stream]);
  return (
    <div className="relative my-2 max-w-[480px] bg-well">
      <video className="block w-full" ref={place} autoPlay muted playsInline tabIndex={-1} aria-hidden="true" />
      {children}
    </div>
  );
}
