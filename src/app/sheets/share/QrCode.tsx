import { useMemo } from "react";
import { qrPicture } from "./qrPath";

/** The QR code of an address, or a sentence where it is too long for one. */
export function QrCode({ address, title }: { readonly address: string; readonly title: string }) {
  const picture = useMemo(() => qrPicture(address), [address]);
  if (picture === null) return <p>The link is too long for a QR code; pass on the link or the file.</p>;
  const { size, path } = picture;
  return (
    <svg
      className="block w-[min(460px,100%)] mt-4 print:w-[46mm] print:m-0"
      viewBox={`0 0 ${size} ${size}`}
      shapeRendering="crispEdges"
      role="img"
      aria-label={`QR code of the link that opens the sheet “${title}”`}
    >
      {/* A code is read by cameras: dark on light in every theme. */}
      <rect className="fill-[#fff]" width={size} height={size} />
      <path className="fill-[#000]" d={path} />
    </svg>
  );
}
