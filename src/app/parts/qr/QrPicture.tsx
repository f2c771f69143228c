import { useMemo } from "react";
import { qrPicture } from "./qrPath";

interface QrProps {
  readonly address: string;
  /** What it leads to, for who cannot see it. */
  readonly label: string;
  /** Its size. */
  readonly className: string;
}

/** The QR code of an address, or a sentence where it is too long for one. */
export function QrPicture({ address, label, className }: QrProps) {
  const picture = useMemo(() => qrPicture(address), [address]);
  if (picture === null) return <p>The link is too long for a QR code; pass on the link or the file.</p>;
  const { size, path } = picture;
  return (
    <svg
      className={`block ${className}`}
      viewBox={`0 0 ${size} ${size}`}
      shapeRendering="crispEdges"
      role="img"
      aria-label={label}
    >
      {/* A code is read by cameras: dark on light in every theme. */}
      <rect className="fill-[#fff]" width={size} height={size} />
      <path className="fill-[#000]" d={path} />
    </svg>
  );
}
