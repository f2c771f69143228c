import { createPortal } from "react-dom";
import { FilesGoneLine } from "../page/FilesGoneLine";

const open = (dialog: HTMLDialogElement | null) => dialog?.showModal();

/** Comes in the place of a dialog whose files cannot be had, by the browser's own: the page behind it stays as it is. */
export function DialogGone({ onClose }: { readonly onClose: () => void }) {
  return createPortal(
    <dialog ref={open} className="sheet" aria-label="Not loaded" onClose={onClose}>
      <FilesGoneLine />
      <form method="dialog">
        <button type="submit" className="button mt-4">
          Close
        </button>
      </form>
    </dialog>,
    document.body,
  );
}
