import { lazy, Suspense, useMemo, useState } from "react";
import type { Sheet as DrillSheet } from "../../drill/sheet/sheet";
import { Sheet } from "../shell/Sheet";
import { sittingProblem } from "../sittings/stationNeeds";
import { fileName, fileText } from "./sheetFile";
import { linkOf } from "./sheetsAddress";

// Fetched when a code is first asked for.
const QrCode = lazy(async () => ({ default: (await import("./QrCode")).QrCode }));

const fullAddress = (hash: string) => `${location.origin}${location.pathname}${hash}`;

function PassOn({ sheet }: { readonly sheet: DrillSheet }) {
  const link = useMemo(() => linkOf(sheet, "sheets"), [sheet]);
  const [said, setSaid] = useState("");
  if ("says" in link) return <p>{link.says}.</p>;
  const address = fullAddress(link.hash);
  const copy = () =>
    navigator.clipboard.writeText(address).then(
      () => setSaid("Copied."),
      () => setSaid("This browser does not let the page copy; select the link and copy it by hand."),
    );
  return (
    <>
      <p>This link carries the whole sheet. Opening it overwrites nothing.</p>
      <textarea readOnly aria-label="Link that carries the sheet" value={address} />
      <div className="sheet-row">
        <button type="button" className="button" onClick={copy}>
          Copy the link
        </button>
        <span role="status">{said}</span>
      </div>
      <Suspense fallback={<p>Drawing the code…</p>}>
        <QrCode address={address} title={sheet.title} />
      </Suspense>
    </>
  );
}

/** The way to a sitting by this sheet, or why there is none. */
function SitLink({ sheet, sitting }: { readonly sheet: DrillSheet; readonly sitting: ReturnType<typeof linkOf> }) {
  const problem = sittingProblem(sheet);
  if (problem !== null) return <p className="sheets-note">It cannot be sat yet: {problem}.</p>;
  if ("says" in sitting) return <p className="sheets-note">{sitting.says}.</p>;
  return (
    <a className="button primary" href={sitting.hash}>
      Sit this sheet
    </a>
  );
}

/** What can be done with a sheet as it stands: sit it, pass it on, print it. Null while it is not sound. */
export function SheetActions({ sheet }: { readonly sheet: DrillSheet | null }) {
  const [isOpen, setIsOpen] = useState(false);
  const sitting = useMemo(() => (sheet === null ? null : linkOf(sheet, "sittings")), [sheet]);
  if (sheet === null || sitting === null) {
    return <p className="sheets-note">Mend what is marked; then the sheet can be sat and passed on.</p>;
  }
  return (
    <>
      <SitLink sheet={sheet} sitting={sitting} />
      <button type="button" className="button" aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
        Link and QR code
      </button>
      <a
        className="button"
        download={fileName(sheet.title)}
        href={`data:application/json;charset=utf-8,${encodeURIComponent(fileText(sheet))}`}
      >
        Save as a file
      </a>
      <button type="button" className="button" onClick={() => print()}>
        Print
      </button>
      <Sheet title="Pass this sheet on" isOpen={isOpen} onClose={() => setIsOpen(false)}>
        <PassOn sheet={sheet} />
      </Sheet>
    </>
  );
}

/** The code and nothing else, for the printed page. */
export function PrintedCode({ sheet }: { readonly sheet: DrillSheet }) {
  const link = useMemo(() => linkOf(sheet, "sheets"), [sheet]);
  if ("says" in link) return null;
  return (
    <div className="only-print preview-code">
      <Suspense>
        <QrCode address={fullAddress(link.hash)} title={sheet.title} />
      </Suspense>
    </div>
  );
}
