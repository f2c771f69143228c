import { lazy, Suspense, useMemo, useState } from "react";
import type { Sheet as DrillSheet } from "../../../drill/sheet/sheet";
import { SHEET_WORDS } from "../../../handover/sheetWords";
import { sittingProblem } from "../../../handover/stationNeeds";
import { problemText } from "../../../wording/problem";
import { fileText } from "../../keeping/sheets/sheetFile";
import { linkOf } from "../../keeping/sheets/sheetsAddress";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { copyText } from "../../parts/files/copyText";
import { fileNameOf } from "../../parts/files/fileName";
import { isLocalPage } from "./localPage";

// Fetched when a code is first asked for.
const QrCode = lazy(async () => ({ default: (await import("./QrCode")).QrCode }));

const fullAddress = (hash: string) => `${location.origin}${location.pathname}${hash}`;

const LOCAL_ONLY =
  "This page runs on this machine alone, so this link and its code work only here. To pass the sheet on, save it as a file.";

function PassOn({ sheet }: { readonly sheet: DrillSheet }) {
  const link = useMemo(() => linkOf(sheet, "sheets"), [sheet]);
  const [said, setSaid] = useState("");
  if ("says" in link) return <p>The sheet cannot be passed on as a link: {link.says}.</p>;
  const address = fullAddress(link.hash);
  const copy = async () =>
    setSaid(
      (await copyText(address))
        ? "Copied."
        : "This browser does not let the page copy. Select the link and copy it yourself.",
    );
  return (
    <>
      {isLocalPage(location) && <p role="note">{LOCAL_ONLY}</p>}
      <p>
        This link contains the whole sheet. Whoever opens it can look at it, practice it or save it. Nothing is
        overwritten.
      </p>
      <textarea readOnly aria-label="Link that contains the sheet" value={address} />
      <div className="row mt-4">
        <Button onClick={copy}>Copy the link</Button>
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
  if (problem !== null)
    return (
      <p className="col-span-full my-3 text-small text-soft print:hidden">
        This sheet cannot be used yet: {problemText(problem, SHEET_WORDS)}.
      </p>
    );
  if ("says" in sitting) return <p className="col-span-full my-3 text-small text-soft print:hidden">{sitting.says}.</p>;
  return (
    <a className="button primary" href={sitting.hash}>
      Sit this sheet
    </a>
  );
}

/** What can be done with a sheet: use it, pass it on, print it. Null while it is not sound. */
export function SheetActions({ sheet }: { readonly sheet: DrillSheet | null }) {
  const [isOpen, setIsOpen] = useState(false);
  const sitting = useMemo(() => (sheet === null ? null : linkOf(sheet, "sittings")), [sheet]);
  if (sheet === null || sitting === null) {
    return (
      <p className="col-span-full my-3 text-small text-soft print:hidden">
        Fix the marked fields before using this sheet.
      </p>
    );
  }
  return (
    <>
      <SitLink sheet={sheet} sitting={sitting} />
      <Button aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
        Link and QR code
      </Button>
      <a
        className="button"
        download={fileNameOf({ what: `sheet ${sheet.title}`, at: Date.now(), ending: "json" })}
        href={`data:application/json;charset=utf-8,${encodeURIComponent(fileText(sheet))}`}
      >
        Save as a file
      </a>
      <Button onClick={() => print()}>Print</Button>
      <Dialog title="Pass this sheet on" isOpen={isOpen} onClose={() => setIsOpen(false)}>
        <PassOn sheet={sheet} />
      </Dialog>
    </>
  );
}

/** The code and nothing else, for the printed page. */
export function PrintedCode({ sheet }: { readonly sheet: DrillSheet }) {
  const link = useMemo(() => linkOf(sheet, "sheets"), [sheet]);
  // A code on paper that opens nothing elsewhere is worse than none.
  if ("says" in link || isLocalPage(location)) return null;
  return (
    <div className="hidden print:block preview-code">
      <Suspense>
        <QrCode address={fullAddress(link.hash)} title={sheet.title} />
      </Suspense>
    </div>
  );
}
