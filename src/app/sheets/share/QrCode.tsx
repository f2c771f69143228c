import { QrPicture } from "../../parts/qr/QrPicture";

/** The QR code of an address that opens a sheet. */
export const QrCode = ({ address, title }: { readonly address: string; readonly title: string }) => (
  <QrPicture
    className="w-[min(460px,100%)] mt-4 print:w-[46mm] print:m-0"
    address={address}
    label={`QR code of the link that opens the sheet “${title}”`}
  />
);
